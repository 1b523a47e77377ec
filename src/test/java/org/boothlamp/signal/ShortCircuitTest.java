package org.boothlamp.signal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Random;
import org.boothlamp.testing.PairScript;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** A droplet bridges the arc: volts fall below 8 V for at least 0.5 ms while current flows. */
class ShortCircuitTest {

  private static final ShortCircuitRule RULE = new ShortCircuitRule(8, 9);

  @ParameterizedTest
  @CsvSource({
    "10000, 0.0004, 0",
    "10000, 0.0005, 1",
    "10000, 0.004, 1",
    "5000, 0.0004, 0",
    "5000, 0.0006, 1",
    "2000, 0.0005, 1"
  })
  void shouldCountFromHalfAMillisecond(int rate, double seconds, int expected) {
    PairScript script =
        PairScript.at(rate).arc(120, 22, 0.101).arc(200, 3, seconds).arc(120, 22, 0.2);
    assertEquals(expected, script.total().shortCircuits());
  }

  @Test
  void shouldNotCountVoltsAtTheThreshold() {
    assertEquals(
        0,
        PairScript.at(10_000)
            .arc(120, 22, 0.1)
            .arc(200, 8, 0.004)
            .arc(120, 22, 0.1)
            .total()
            .shortCircuits());
  }

  @Test
  void shouldCountOnceAcrossTheEdgeOfASlot() {
    PairScript script =
        PairScript.at(5_000).arc(120, 22, 0.0392).arc(200, 3, 0.0016).arc(120, 22, 0.1);
    assertEquals(1, script.total().shortCircuits());
    assertEquals(1, script.slots().get(4).shortCircuits(), "in the slot where the arc burns again");
  }

  @Test
  void shouldCountOnceAShortOfSeveralSlots() {
    assertEquals(
        1,
        PairScript.at(5_000)
            .arc(120, 22, 0.1)
            .arc(200, 3, 0.035)
            .arc(120, 22, 0.1)
            .total()
            .shortCircuits());
  }

  @Test
  void shouldNotReachAcrossAGap() {
    PairScript script =
        PairScript.at(5_000)
            .arc(120, 22, 0.1)
            .arc(200, 3, 0.0004)
            .gap(0.0002)
            .arc(200, 3, 0.0004)
            .arc(120, 22, 0.1);
    assertEquals(0, script.total().shortCircuits());
  }

  @Test
  void shouldCountAfterAGapWhatIsLongEnoughByItself() {
    PairScript script =
        PairScript.at(5_000).arc(200, 3, 0.002).gap(0.02).arc(200, 3, 0.002).arc(120, 22, 0.1);
    assertEquals(1, script.total().shortCircuits());
  }

  /** The wire froze to the work and the current was cut: no droplet was transferred. */
  @Test
  void shouldNotCountAContactThatEndsWithTheCurrent() {
    assertEquals(0, PairScript.at(5_000).arc(200, 3, 0.2).idle(0.1).total().shortCircuits());
  }

  @Test
  void shouldNotCountLowVoltsWithoutCurrent() {
    assertEquals(0, PairScript.at(5_000).arc(0, 0, 0.2).arc(120, 22, 0.1).total().shortCircuits());
  }

  /** Clamp and divider each with either sign, electrode positive and negative: all the same arc. */
  @ParameterizedTest
  @CsvSource({"1, 1", "1, -1", "-1, 1", "-1, -1"})
  void shouldCountTheSameHoweverTheSensorsAreTurned(int clamp, int divider) {
    PairScale scale =
        new PairScale(
            new ChannelScale(clamp / 16.0, 12.5), new ChannelScale(divider / 128.0, -40.25));
    for (int electrode : new int[] {1, -1}) {
      PairScript script = PairScript.at(5_000, scale);
      for (int k = 0; k < 20; k++) {
        script
            .arc(electrode * 120, electrode * 22, 0.0137)
            .arc(electrode * 220, electrode * 2, 0.0031);
      }
      script.arc(electrode * 120, electrode * 22, 0.05);
      assertEquals(20, script.total().shortCircuits());
    }
  }

  /** High-frequency start: volts swing against the current, which no contact can make them do. */
  @ParameterizedTest
  @ValueSource(ints = {1, -1})
  void shouldNotCountVoltsAgainstTheCurrent(int electrode) {
    PairScript script = PairScript.at(5_000).arc(electrode * 60, electrode * 14, 0.1);
    for (int k = 0; k < 10; k++) {
      script.arc(electrode * 60, -electrode * 5, 0.001).arc(electrode * 60, electrode * 14, 0.01);
    }
    assertEquals(0, script.total().shortCircuits());
  }

  @Test
  void shouldAllowNoiseAroundZeroVolts() {
    Random noise = new Random(2);
    PairScript script = PairScript.at(5_000).arc(120, 22, 0.1);
    script.wave(t -> 200, t -> 0.2 + 0.5 * (noise.nextDouble() - 0.5), 0.003);
    assertEquals(1, script.arc(120, 22, 0.1).total().shortCircuits());
  }

  @Test
  void shouldCountNothingAtARateTooSlowToSeeIt() {
    PairScript script = PairScript.at(1_999).arc(120, 22, 0.1).arc(200, 3, 0.05).arc(120, 22, 0.1);
    assertEquals(0, script.total().shortCircuits());
    assertFalse(ShortCircuitRule.isMeasurableAt(1_999));
    assertTrue(ShortCircuitRule.isMeasurableAt(2_000));
  }

  /** Most slots skip the search for shorts; none that holds one may. */
  @Test
  void shouldFindWhatALookAtEveryPairFinds() {
    Random random = new Random(23);
    short[] current = new short[200_000];
    short[] voltage = new short[200_000];
    int expected = 0;
    int run = 0;
    for (int k = 0; k < current.length; ) {
      int length = 1 + random.nextInt(120);
      int kind = random.nextInt(4);
      for (int end = Math.min(k + length, current.length); k < end; k++) {
        double amps = kind == 0 ? random.nextInt(9) : 20 + random.nextInt(200);
        double volts = kind == 1 ? 8 + random.nextInt(20) : random.nextInt(9);
        current[k] = (short) (amps * 16);
        voltage[k] = (short) (volts * 128);
        boolean flowing = amps >= 9;
        boolean shorted = flowing && volts < 8;
        expected += !shorted && flowing && run >= 3 ? 1 : 0;
        run = shorted ? run + 1 : 0;
      }
    }
    long[] found = new long[1];
    new SlotBuilder(5_000, PairScript.SCALE, RULE, slot -> found[0] += slot.sums().shortCircuits())
        .accept(current, voltage, current.length, 0);
    assertTrue(expected > 500, "the test should hold shorts: " + expected);
    assertEquals(expected, found[0]);
  }

  @Test
  void shouldTakeAnotherRuleFromTheNextSlotOn() {
    long[] found = new long[1];
    SlotBuilder[] self = new SlotBuilder[1];
    self[0] =
        new SlotBuilder(
            5_000, PairScript.SCALE, RULE, slot -> found[0] += slot.sums().shortCircuits());
    self[0].setRule(new ShortCircuitRule(2, 9));
    for (PairScript.Part part :
        PairScript.at(5_000).arc(120, 22, 0.1).arc(200, 3, 0.002).arc(120, 22, 0.1).parts()) {
      self[0].accept(part.current(), part.voltage(), part.current().length, 0);
    }
    assertEquals(0, found[0]);
  }

  @ParameterizedTest
  @CsvSource({"0, 9", "-1, 9", "8, 0", "NaN, 9", "8, NaN"})
  void shouldRefuseThresholdsThatMeanNothing(double volts, double amps) {
    assertThrows(IllegalArgumentException.class, () -> new ShortCircuitRule(volts, amps));
  }
}
