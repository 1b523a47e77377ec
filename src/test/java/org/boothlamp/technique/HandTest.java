package org.boothlamp.technique;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.SplittableRandom;
import java.util.function.DoubleUnaryOperator;
import org.boothlamp.judging.Side;
import org.boothlamp.procedure.Characteristic;
import org.boothlamp.procedure.Process;
import org.boothlamp.procedure.Quantity;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Steadiness, drift, beat: of movements that are written down, and so known. */
class HandTest {

  private static TechniqueReading read(
      boolean whip, DoubleUnaryOperator volts, double noise, List<Spell> spells) {
    RunProfile profile = SyntheticRun.profile(24, t -> 120, volts, noise);
    return SyntheticRun.reader(
            SyntheticRun.procedure(Process.MANUAL_METAL_ARC, Characteristic.CONSTANT_CURRENT, whip),
            SchoolScales.NONE)
        .read(profile, spells, RunFacts.NONE);
  }

  /** A sine of 1 V has a standard deviation of 0.71 V; half-second means keep nearly all at 6 s. */
  @Test
  void shouldMeasureTheHandAndNotTheRipple() {
    Steadiness still = read(false, t -> 20, 0.03, List.of()).steadiness();
    assertTrue(still.spread() < 0.12, "ripple of 0.6 V a point: " + still.spread());
    Steadiness moving =
        read(false, t -> 20 + Math.sin(2 * Math.PI * t / 6), 0.03, List.of()).steadiness();
    assertEquals(0.71, moving.spread(), 0.1);
    assertEquals(20, moving.level(), 0.1);
    assertEquals(3.5, moving.spreadPercent(), 0.5);
  }

  @Test
  void shouldMeasureDrift() {
    Steadiness hand = read(false, t -> 20 + 3 * t / 60, 0.01, List.of()).steadiness();
    assertEquals(3, hand.driftPerMinute(), 0.4);
    assertTrue(hand.spread() < 0.1);
  }

  @Test
  void shouldTellHowLongItTookToGetSteady() {
    Steadiness hand = read(false, t -> t < 3 ? 26 - t : 20, 0.002, List.of()).steadiness();
    assertEquals(3, hand.steadyAfterSeconds(), 0.3);
    assertEquals(0, read(false, t -> 20, 0.002, List.of()).steadiness().steadyAfterSeconds());
  }

  @ParameterizedTest
  @ValueSource(doubles = {0.5, 0.8, 1.2, 1.6})
  void shouldFindTheBeatOfAWhip(double periodSeconds) {
    PeriodicMovement movement =
        read(true, t -> 20 + 2 * Math.sin(2 * Math.PI * t / periodSeconds), 0.02, List.of())
            .movement();
    assertTrue(movement.isFound());
    assertEquals(periodSeconds, movement.periodSeconds(), 0.06);
  }

  /** A hand that wanders without a beat, forty times. */
  @Test
  void shouldFindNoBeatInAWanderingHand() {
    SplittableRandom random = new SplittableRandom(11);
    int found = 0;
    for (int run = 0; run < 40; run++) {
      double[] wander = new double[481];
      double kept = Math.exp(-RunProfile.POINT_SECONDS / 1.2);
      for (int k = 1; k < wander.length; k++) {
        wander[k] = kept * wander[k - 1] + Math.sqrt(1 - kept * kept) * random.nextGaussian();
      }
      PeriodicMovement movement =
          read(true, t -> 20 + wander[(int) (t * 20)], 0.01, List.of()).movement();
      found += movement.isFound() ? 1 : 0;
    }
    assertTrue(found <= 4, found + " of 40");
  }

  @Test
  void shouldNotScoldAWhipThatTheProcedureAsksFor() {
    DoubleUnaryOperator whip = t -> 20 + 6 * Math.sin(2 * Math.PI * t / 1.6);
    List<Spell> spells = List.of(new Spell(Quantity.VOLTS, Side.HIGH, 8, 8.4));
    assertEquals(Cause.WHIP, read(true, whip, 0.01, spells).spells().get(0).cause());
    assertFalse(read(false, whip, 0.01, spells).spells().get(0).cause() == Cause.WHIP);
  }

  /** Whipping, and then an arc that stays long for four seconds: that is scolded. */
  @Test
  void shouldScoldALongArcDuringAWhip() {
    DoubleUnaryOperator volts =
        t -> (t > 8 && t < 12 ? 26 : 20) + 0.5 * Math.sin(2 * Math.PI * t / 0.8);
    List<Spell> spells = List.of(new Spell(Quantity.VOLTS, Side.HIGH, 8.6, 12.4));
    assertEquals(Cause.ARC_LONGER, read(true, volts, 0.005, spells).spells().get(0).cause());
  }
}
