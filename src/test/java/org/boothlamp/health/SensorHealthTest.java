package org.boothlamp.health;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Random;
import java.util.Set;
import java.util.function.DoubleUnaryOperator;
import org.boothlamp.arc.ArcDetector;
import org.boothlamp.arc.ArcRule;
import org.boothlamp.signal.Polarity;
import org.boothlamp.signal.ShortCircuitRule;
import org.boothlamp.signal.Slot;
import org.boothlamp.signal.SlotBuilder;
import org.boothlamp.testing.PairScript;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** The rules at their limits, and what looks like a fault and is none. */
class SensorHealthTest {

  private static final int RATE = 5_000;
  private static final int LOWEST = -16_384;
  private static final int HIGHEST = 16_383;
  private static final DoubleUnaryOperator NOTHING = t -> 0;

  private final ArcDetector detector = new ArcDetector(PairScript.SCALE, ArcRule.STANDARD);
  private SensorHealth health = new SensorHealth(PairScript.SCALE, RATE, LOWEST, HIGHEST);
  private final Set<HealthFault> found = EnumSet.noneOf(HealthFault.class);
  private final List<Integer> offsets = new ArrayList<>();
  private final Random random = new Random(7);

  private SlotBuilder builder;

  private static PairScript script() {
    return PairScript.at(RATE);
  }

  private Set<HealthFault> after(PairScript script) {
    builder = new SlotBuilder(RATE, PairScript.SCALE, new ShortCircuitRule(8, 9), this::onSlot);
    for (PairScript.Part part : script.parts()) {
      builder.accept(part.current(), part.voltage(), part.current().length, part.firstIndex());
    }
    return found;
  }

  private void onSlot(Slot slot) {
    detector.accept(slot);
    health.accept(slot, detector.state(), detector.slotHasCurrent(), Polarity.DC_PLUS);
    builder.setCurrentOffset(health.currentOffsetCounts());
    offsets.add(health.currentOffsetCounts());
    for (HealthFault fault : HealthFault.values()) {
      if (health.isActive(fault)) {
        found.add(fault);
      }
    }
  }

  private DoubleUnaryOperator noisy(double mean, double deviation) {
    return t -> mean + deviation * random.nextGaussian();
  }

  @Test
  void shouldFindNothingInASoundRun() {
    assertEquals(Set.of(), after(script().idle(2).arc(180, 2, 0.1).arc(110, 23, 5).idle(2)));
    assertEquals(0, health.activeBits());
  }

  @ParameterizedTest
  @CsvSource({"0.04, false", "0.06, true"})
  void shouldCallItClippedFromATwentiethOfThePairs(double share, boolean clipped) {
    double limit = HIGHEST / 16.0;
    DoubleUnaryOperator amps = t -> t * 50 % 1 < share ? limit : 110;
    assertEquals(
        clipped ? Set.of(HealthFault.CLIPPED) : Set.of(),
        after(script().idle(1).wave(amps, t -> 23, 0.3).idle(1)));
  }

  /** A burst of 30 ms in which a pair in ten is at the limit, either way. */
  @Test
  void shouldBearTheHighFrequencyOfATigStart() {
    DoubleUnaryOperator burst = t -> t * 500 % 1 < 0.1 ? LOWEST / 128.0 : -50;
    assertEquals(Set.of(), after(script().idle(1).wave(NOTHING, burst, 0.03).arc(110, 23, 2)));
  }

  @Test
  void shouldNotCallAChannelClippedThatRestsAtTheEndOfItsRange() {
    health = new SensorHealth(PairScript.SCALE, RATE, 0, HIGHEST);
    assertEquals(Set.of(), after(script().wave(NOTHING, NOTHING, 2).arc(110, 23, 2)));
  }

  @Test
  void shouldLetAQuietChannelStandStillAtIdle() {
    assertEquals(Set.of(), after(script().frozen(0, 70, 5)));
  }

  @ParameterizedTest
  @CsvSource({"0.38, false", "0.42, true"})
  void shouldCallAChannelFrozenAfterFourTenths(double seconds, boolean frozen) {
    PairScript script = script().idle(1).wave(noisy(110, 1), noisy(23, 0.1), 1);
    after(script.frozen(110, 23, seconds).wave(noisy(110, 1), noisy(23, 0.1), 1));
    assertEquals(frozen, found.contains(HealthFault.FROZEN_CURRENT));
    assertEquals(frozen, found.contains(HealthFault.FROZEN_VOLTAGE));
  }

  @Test
  void shouldNotTakeAStuckElectrodeForATapThatIsOff() {
    assertEquals(Set.of(), after(script().idle(1).wave(noisy(110, 1), noisy(1.2, 0.05), 3)));
  }

  @Test
  void shouldSeeThatATapIsOffThoughNoArcIsFound() {
    assertEquals(
        Set.of(HealthFault.AMPS_WITHOUT_VOLTS),
        after(script().wave(NOTHING, NOTHING, 1).wave(noisy(110, 1), noisy(0, 0.1), 1)));
    assertEquals(100, health.onsetSlot(HealthFault.AMPS_WITHOUT_VOLTS));
  }

  @Test
  void shouldSeeAnArcWithoutCurrentByItsDroplets() {
    DoubleUnaryOperator droplets = t -> t * 8 % 1 < 0.2 ? 12 : 23;
    assertEquals(
        Set.of(HealthFault.VOLTS_WITHOUT_AMPS), after(script().idle(1).wave(NOTHING, droplets, 1)));
  }

  @Test
  void shouldSeeTheClampComeOffInsideASteadyArc() {
    assertEquals(
        Set.of(HealthFault.VOLTS_WITHOUT_AMPS),
        after(script().idle(1).arc(60, 11, 2).arc(0, 11, 0.4)));
    assertEquals(300, health.onsetSlot(HealthFault.VOLTS_WITHOUT_AMPS));
  }

  /** The open-circuit volts of wire machines lie where arcs burn. */
  @ParameterizedTest
  @ValueSource(doubles = {0.05, 0.2, 0.35, 0.5, 3})
  void shouldNotTakeATriggerThatIsHeldForAnArc(double seconds) {
    PairScript script = script().wave(NOTHING, NOTHING, 1);
    for (int k = 0; k < 5; k++) {
      script.wave(NOTHING, t -> 22 * (1 - Math.exp(-t / 0.02)), seconds);
      script.wave(NOTHING, t -> 22 * Math.exp(-t / 0.05), 0.3);
    }
    assertEquals(Set.of(), after(script));
  }

  @Test
  void shouldNotTakeAMachineThatRunsDownForAnArc() {
    assertEquals(Set.of(), after(script().idle(1).wave(NOTHING, t -> 70 * Math.exp(-t / 0.8), 5)));
  }

  @Test
  void shouldNotTakeAWireArcThatGoesOutForAClampThatIsOff() {
    assertEquals(Set.of(), after(script().idle(1).arc(140, 17, 2).arc(0, 20, 1).arc(0, 0, 1)));
  }

  @Test
  void shouldNotTakeReducedOpenCircuitVoltsForAnArc() {
    assertEquals(Set.of(), after(script().idle(1).arc(110, 22, 2).idle(0.2).arc(0, 14, 3)));
  }

  @Test
  void shouldFindTheLeadsSwappedInThreeTenthsOfArc() {
    after(script().idle(1).arc(-110, -23, 0.4));
    assertEquals(Set.of(HealthFault.WRONG_POLARITY), found);
  }

  @ParameterizedTest
  @ValueSource(ints = {1, -1})
  void shouldCallItDisagreementWhereOneSensorIsTurned(int electrode) {
    after(script().idle(1).arc(electrode * 110, electrode * -23, 0.4));
    assertEquals(Set.of(HealthFault.SENSORS_DISAGREE), found);
  }

  @ParameterizedTest
  @CsvSource({"0.15, 0", "2, 32", "-2, -32", "2.9, 46"})
  void shouldFollowTheZeroInsideItsBand(double amps, int counts) {
    assertEquals(Set.of(), after(script().wave(noisy(amps, 0.5), noisy(0, 0.05), 2)));
    assertEquals(counts, offsets.get(offsets.size() - 1), 2);
  }

  @Test
  void shouldNotLookForTheZeroBeforeHalfASecondOfQuiet() {
    after(script().idle(0.1).arc(110, 23, 1).wave(t -> 2, t -> 70, 0.75));
    assertEquals(0, offsets.get(offsets.size() - 1));
    after(script().idle(0.1).arc(110, 23, 1).wave(t -> 2, t -> 70, 0.85));
    assertEquals(32, offsets.get(offsets.size() - 1));
  }

  /** A weak arc can be below arc-on: its volts forbid to call its current the clamp's zero. */
  @Test
  void shouldNotTakeAWeakArcForTheZero() {
    assertEquals(Set.of(), after(script().wave(noisy(8, 0.5), noisy(11, 0.2), 3)));
    assertEquals(0, offsets.get(offsets.size() - 1));
  }

  @ParameterizedTest
  @ValueSource(doubles = {3.3, 8, -12, 40})
  void shouldReportAZeroBeyondTheBandAtOpenCircuitVolts(double amps) {
    after(script().idle(1).wave(noisy(amps, 0.5), noisy(70, 0.1), 1));
    assertEquals(Set.of(HealthFault.ZERO_DRIFT), found);
  }

  private PairScript driftedRun() {
    return script()
        .idle(1)
        .wave(noisy(6, 0.5), noisy(70, 0.1), 1)
        .wave(noisy(116, 0.5), noisy(23, 0.1), 3);
  }

  @Test
  void shouldKeepTheZeroInDoubtThroughARun() {
    after(driftedRun());
    assertTrue(health.isActive(HealthFault.ZERO_DRIFT));
    assertEquals(500, health.endSlot(HealthFault.ZERO_DRIFT));
  }

  @Test
  void shouldTrustTheZeroAgainOnceItIsBack() {
    after(driftedRun().wave(noisy(0, 0.5), noisy(70, 0.1), 1.6));
    assertFalse(health.isActive(HealthFault.ZERO_DRIFT));
  }

  @ParameterizedTest
  @CsvSource({"2.4, 0.05, false", "3.6, 0.05, true", "0.5, 0.8, false", "0.5, 1.2, true"})
  void shouldCallItNoiseFromThreeAmpsOrAVolt(double amps, double volts, boolean noise) {
    after(script().wave(noisy(0, amps), noisy(0, volts), 1.5));
    assertEquals(noise ? Set.of(HealthFault.NOISE) : Set.of(), found);
  }

  @Test
  void shouldBearTheRippleOfAMachineAtOpenCircuit() {
    DoubleUnaryOperator ripple = t -> 70 + 8 * Math.sin(2 * Math.PI * 300 * t);
    assertEquals(Set.of(), after(script().wave(noisy(0, 0.5), ripple, 3)));
  }

  @ParameterizedTest
  @CsvSource({"0.04, false", "0.06, true"})
  void shouldReportGapsFromATenthOfHalfASecond(double seconds, boolean gaps) {
    after(script().idle(1).gap(seconds).idle(1));
    assertEquals(gaps ? Set.of(HealthFault.GAPS) : Set.of(), found);
    assertEquals(0, health.activeBits());
  }
}
