package org.boothlamp.signal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.Random;
import org.boothlamp.testing.PairScript;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class PairSumsTest {

  private static final PairScale SCALE = PairScript.SCALE;

  @Test
  void shouldGiveTheRmsOfASineAsPeakOverRootTwo() {
    PairSums sums = PairScript.at(10_000).sine(1_000, 20, 50, 1).total();
    assertEquals(1_000 / Math.sqrt(2), sums.rmsAmps(SCALE), 0.01);
    assertEquals(1_000 * 2 / Math.PI, sums.meanAbsoluteAmps(SCALE), 0.1);
    assertEquals(0, sums.meanAmps(SCALE), 0.01);
  }

  @Test
  void shouldGiveTheRmsOfASquareWaveAsItsPeak() {
    PairSums sums = PairScript.at(10_000).square(150, 22, 50, 1).total();
    assertEquals(150, sums.rmsAmps(SCALE), 1e-9);
    assertEquals(22, sums.rmsVolts(SCALE), 1e-9);
    assertEquals(150, sums.meanAbsoluteAmps(SCALE), 1e-9);
    assertEquals(150 * 22, sums.meanWatts(SCALE), 1e-6);
  }

  /** A pulsed arc: the product of the means is 3619.2 W, the true power 12.73 % more. */
  @Test
  void shouldGiveTruePowerOfAPulsedArc() {
    PairSums sums = twoLevels(0.4, 300, 28, 60, 20);
    assertEquals(156, sums.meanAmps(SCALE), 1e-9);
    assertEquals(23.2, sums.meanVolts(SCALE), 1e-9);
    assertEquals(4_080, sums.meanWatts(SCALE), 1e-9);
    assertEquals(0.1273, sums.meanWatts(SCALE) / (156 * 23.2) - 1, 0.00005);
  }

  /** A short-circuiting arc: the product of the means is 2548 W, the true power 11.93 % less. */
  @Test
  void shouldGiveTruePowerOfAShortCircuitingArc() {
    PairSums sums = twoLevels(0.8, 120, 22, 220, 3);
    assertEquals(140, sums.meanAmps(SCALE), 1e-9);
    assertEquals(18.2, sums.meanVolts(SCALE), 1e-9);
    assertEquals(2_244, sums.meanWatts(SCALE), 1e-9);
    assertEquals(-0.1193, sums.meanWatts(SCALE) / (140 * 18.2) - 1, 0.00005);
  }

  private static PairSums twoLevels(
      double firstShare, double amps, double volts, double otherAmps, double otherVolts) {
    double cycle = 0.02;
    PairScript script = PairScript.at(10_000);
    for (int k = 0; k < 50; k++) {
      script.arc(amps, volts, firstShare * cycle);
      script.arc(otherAmps, otherVolts, (1 - firstShare) * cycle);
    }
    return script.total();
  }

  @Test
  void shouldGivePositivePowerOnEitherPolarity() {
    assertEquals(2_640, PairScript.at(1_000).arc(-120, -22, 1).total().meanWatts(SCALE), 1e-9);
    assertEquals(2_640, PairScript.at(1_000).arc(120, 22, 1).total().meanWatts(SCALE), 1e-9);
  }

  /**
   * Against plain arithmetic on each pair, with counts on both sides of zeros that are not whole.
   */
  @ParameterizedTest
  @ValueSource(doubles = {0, 0.5, -0.25, 2047.3, -900.75})
  void shouldAgreeWithPlainArithmetic(double zero) {
    PairScale scale = new PairScale(new ChannelScale(-0.07, zero), new ChannelScale(0.013, -zero));
    Random random = new Random(7);
    short[] current = new short[997];
    short[] voltage = new short[997];
    Plain plain = new Plain();
    for (int k = 0; k < current.length; k++) {
      current[k] = (short) (zero + 300 * random.nextGaussian());
      voltage[k] = (short) (-zero + 300 * random.nextGaussian());
      plain.add(scale.current().toUnits(current[k]), scale.voltage().toUnits(voltage[k]));
    }
    PairSums sums = new PairSums();
    new PairLoop(5_000, scale, new ShortCircuitRule(8, 9))
        .add(current, voltage, 0, current.length, sums);
    assertEquals(plain.amps / 997, sums.meanAmps(scale), 1e-9);
    assertEquals(plain.volts / 997, sums.meanVolts(scale), 1e-9);
    assertEquals(plain.absoluteAmps / 997, sums.meanAbsoluteAmps(scale), 1e-9);
    assertEquals(plain.absoluteVolts / 997, sums.meanAbsoluteVolts(scale), 1e-9);
    assertEquals(Math.sqrt(plain.ampsSquared / 997), sums.rmsAmps(scale), 1e-9);
    assertEquals(Math.sqrt(plain.voltsSquared / 997), sums.rmsVolts(scale), 1e-9);
    assertEquals(plain.watts / 997, sums.meanWatts(scale), 1e-8);
  }

  private static final class Plain {
    double amps;
    double volts;
    double absoluteAmps;
    double absoluteVolts;
    double ampsSquared;
    double voltsSquared;
    double watts;

    void add(double i, double v) {
      amps += i;
      volts += v;
      absoluteAmps += Math.abs(i);
      absoluteVolts += Math.abs(v);
      ampsSquared += i * i;
      voltsSquared += v * v;
      watts += v * i;
    }
  }

  /** All on one side takes a shorter way through the loop: it must give the same sums. */
  @ParameterizedTest
  @CsvSource({"100, 20", "-100, -20", "100, -20", "0, 0"})
  void shouldGiveTheAbsoluteMeanOfOneSidedPairs(double amps, double volts) {
    PairSums sums = PairScript.at(1_000).arc(amps, volts, 0.1).total();
    assertEquals(Math.abs(amps), sums.meanAbsoluteAmps(SCALE), 1e-12);
    assertEquals(Math.abs(volts), sums.meanAbsoluteVolts(SCALE), 1e-12);
  }

  @Test
  void shouldKeepExtremesOfCounts() {
    PairSums sums = PairScript.at(1_000).arc(10, 1, 0.05).arc(-30, 2, 0.05).total();
    assertEquals(-480, sums.lowestCurrentCount());
    assertEquals(160, sums.highestCurrentCount());
    assertEquals(128, sums.lowestVoltageCount());
    assertEquals(256, sums.highestVoltageCount());
  }

  @Test
  void shouldHoldTheWholeRangeOfTheConverter() {
    PairScale scale = new PairScale(new ChannelScale(1, 0), new ChannelScale(1, 0));
    short[] lowest = new short[1_001];
    Arrays.fill(lowest, Short.MIN_VALUE);
    PairSums sums = new PairSums();
    new PairLoop(100_000, scale, new ShortCircuitRule(8, 9)).add(lowest, lowest, 0, 1_001, sums);
    assertEquals(32_768.0, sums.rmsAmps(scale), 0);
    assertEquals(32_768.0, sums.meanAbsoluteVolts(scale), 0);
    assertEquals(32_768.0 * 32_768, sums.meanWatts(scale), 0);
  }

  @Test
  void shouldGiveNoReadingWithoutPairs() {
    PairSums none = new PairSums();
    assertTrue(Double.isNaN(none.meanAmps(SCALE)));
    assertTrue(Double.isNaN(none.meanAbsoluteVolts(SCALE)));
    assertTrue(Double.isNaN(none.rmsAmps(SCALE)));
    assertTrue(Double.isNaN(none.meanWatts(SCALE)));
    assertTrue(Double.isNaN(none.standardDeviationAmps(SCALE)));
  }

  @Test
  void shouldCopyEverything() {
    PairSums sums =
        PairScript.at(5_000).arc(120, 22, 0.01).arc(200, 3, 0.001).arc(120, 22, 0.009).total();
    PairSums copy = PairScript.at(5_000).arc(-5, 4, 0.01).total();
    copy.set(sums);
    assertEquals(1, copy.shortCircuits());
    assertEquals(sums.pairs(), copy.pairs());
    assertEquals(sums.meanAmps(SCALE), copy.meanAmps(SCALE), 0);
    assertEquals(sums.rmsAmps(SCALE), copy.rmsAmps(SCALE), 0);
    assertEquals(sums.rmsVolts(SCALE), copy.rmsVolts(SCALE), 0);
    assertEquals(sums.meanAbsoluteAmps(SCALE), copy.meanAbsoluteAmps(SCALE), 0);
    assertEquals(sums.meanAbsoluteVolts(SCALE), copy.meanAbsoluteVolts(SCALE), 0);
    assertEquals(sums.meanWatts(SCALE), copy.meanWatts(SCALE), 0);
    assertEquals(sums.lowestCurrentCount(), copy.lowestCurrentCount());
    assertEquals(sums.highestVoltageCount(), copy.highestVoltageCount());
  }
}
