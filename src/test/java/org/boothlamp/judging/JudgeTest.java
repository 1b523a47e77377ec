package org.boothlamp.judging;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import org.boothlamp.procedure.Quantity;
import org.boothlamp.procedure.Window;
import org.boothlamp.signal.PairSums;
import org.boothlamp.signal.Polarity;
import org.boothlamp.testing.PairScript;
import org.boothlamp.testing.Plans;
import org.junit.jupiter.api.Test;

class JudgeTest {

  private static final JudgingPlan FILL =
      Plans.of(Polarity.DC_PLUS, Plans.amps(95, 125), Plans.volts(20, 26));

  private record Excursion(Quantity quantity, Side side, long startSlot, long endSlot) {}

  private final List<Excursion> excursions = new ArrayList<>();
  private Judge judge = judge(5_000);
  private long slot;

  private Judge judge(int pairsPerSecond) {
    return new Judge(
        JudgingRule.STANDARD,
        PairScript.SCALE,
        pairsPerSecond,
        (quantity, e) ->
            excursions.add(new Excursion(quantity, e.side(), e.startSlot(), e.endSlot())));
  }

  private void begin(JudgingPlan plan) {
    slot = 700;
    judge.begin(plan, slot);
  }

  private void arc(double amps, double volts, double seconds) {
    arc(PairScript.at(5_000).arc(amps, volts, seconds));
  }

  private void arc(PairScript script) {
    for (PairSums sums : script.slots()) {
      judge.addArcOn(sums, slot++);
    }
  }

  private void off(int slots) {
    for (int k = 0; k < slots; k++) {
      judge.addArcOff(slot++);
    }
  }

  @Test
  void shouldNotJudgeBeforeItSettles() {
    begin(FILL);
    arc(200, 22, 0.99);
    assertNull(judge.level());
    assertNull(judge.shown());
    arc(200, 22, 0.01);
    assertEquals(Level.RED, judge.level());
    assertEquals(Level.RED, judge.shown());
  }

  @Test
  void shouldNeverJudgeWithoutAProcedure() {
    begin(null);
    arc(110, 23, 5);
    assertNull(judge.level());
    judge.end(slot);
    assertEquals(List.of(), excursions);
  }

  @Test
  void shouldTakeTheWorstOfAllWindows() {
    begin(FILL);
    arc(110, 23, 2);
    assertEquals(Level.GREEN, judge.level());
    arc(110, 25.75, 1);
    assertEquals(Level.AMBER, judge.level());
    arc(130, 25.75, 1);
    assertEquals(Level.RED, judge.level());
  }

  @Test
  void shouldJudgeTenTimesASecond() {
    begin(FILL);
    arc(110, 23, 2);
    arc(2_000, 23, 0.09);
    assertEquals(Level.GREEN, judge.level());
    arc(2_000, 23, 0.01);
    assertEquals(Level.RED, judge.level());
  }

  @Test
  void shouldJudgeTheLastSecondOnly() {
    begin(FILL);
    arc(200, 30, 5);
    arc(110, 23, 1);
    assertEquals(Level.GREEN, judge.level());
    assertEquals(100, judge.average().pairs() / 50);
  }

  @Test
  void shouldLeaveTheFirstSlotOutOfTheAverage() {
    begin(FILL);
    arc(1_900, 70, 0.01);
    arc(110, 23, 0.99);
    assertEquals(Level.GREEN, judge.level());
    assertEquals(110, judge.average().meanAmps(PairScript.SCALE), 0);
  }

  @Test
  void shouldLetTheAverageStandStillWhileTheArcIsOut() {
    begin(FILL);
    arc(110, 23, 2);
    off(20);
    assertEquals(Level.GREEN, judge.level());
    assertEquals(110, judge.average().meanAmps(PairScript.SCALE), 0);
    arc(1_900, 70, 0.01);
    arc(110, 23, 0.2);
    assertEquals(Level.GREEN, judge.level(), "the first slot after an arc-out is an edge too");
  }

  @Test
  void shouldTellAnExcursionWhenItIsOver() {
    begin(FILL);
    arc(110, 23, 2);
    arc(160, 23, 2);
    assertEquals(List.of(), excursions);
    arc(110, 23, 2);
    assertEquals(1, excursions.size());
    assertEquals(Quantity.AMPS, excursions.get(0).quantity());
    assertEquals(Side.HIGH, excursions.get(0).side());
  }

  /** The average comes back inside with the last slots, and is judged only after them. */
  @Test
  void shouldEndAnExcursionNoLaterThanTheLastCurrent() {
    begin(FILL);
    arc(126, 23, 2);
    arc(100, 23, 0.05);
    long lastCurrent = slot;
    off(20);
    assertEquals(Level.AMBER, judge.level());
    judge.end(slot);
    assertEquals(List.of(new Excursion(Quantity.AMPS, Side.HIGH, 800, lastCurrent)), excursions);
  }

  /** A fault can end the judging while the arc is out. */
  @Test
  void shouldEndAnOpenExcursionWithTheLastCurrent() {
    begin(FILL);
    arc(160, 23, 2);
    long lastCurrent = slot;
    off(15);
    judge.end(slot);
    assertEquals(List.of(new Excursion(Quantity.AMPS, Side.HIGH, 800, lastCurrent)), excursions);
  }

  @Test
  void shouldFollowEachWindowByItself() {
    begin(FILL);
    arc(160, 30, 2);
    judge.end(slot);
    assertEquals(
        List.of(
            new Excursion(Quantity.AMPS, Side.HIGH, 800, 900),
            new Excursion(Quantity.VOLTS, Side.HIGH, 800, 900)),
        excursions);
  }

  @Test
  void shouldJudgePowerByTheProducts() {
    begin(Plans.of(Polarity.DC_PLUS, new Window(Quantity.POWER_W, 3_900, 4_300)));
    PairScript pulsed = PairScript.at(5_000);
    for (int k = 0; k < 100; k++) {
      pulsed.arc(300, 28, 0.008).arc(60, 20, 0.012);
    }
    arc(pulsed);
    assertEquals(Level.GREEN, judge.level(), "4080 W; the product of the means is 3619 W");
  }

  @Test
  void shouldJudgeShortCircuitsASecond() {
    begin(Plans.of(Polarity.DC_PLUS, new Window(Quantity.SHORTS_PER_S, 45, 80)));
    arc(110, 23, 2);
    assertEquals(Level.RED, judge.level());
  }

  /** Not measured is not zero: a source too slow for short circuits must not make the lamp red. */
  @Test
  void shouldNotJudgeShortCircuitsThatItCannotMeasure() {
    judge = judge(1_000);
    begin(
        Plans.of(Polarity.DC_PLUS, Plans.amps(95, 125), new Window(Quantity.SHORTS_PER_S, 45, 80)));
    arc(PairScript.at(1_000).arc(110, 23, 3));
    assertEquals(Level.GREEN, judge.level());
    judge.end(slot);
    assertEquals(List.of(), excursions);
  }

  @Test
  void shouldNotJudgeTheLengthOfTheRunLive() {
    begin(Plans.of(Polarity.DC_PLUS, Plans.amps(95, 125), new Window(Quantity.ARC_S, 30, 40)));
    arc(110, 23, 2);
    assertEquals(Level.GREEN, judge.level());
  }

  @Test
  void shouldJudgeAnAlternatingArcByItsRms() {
    begin(Plans.of(Polarity.AC, Plans.amps(95, 125)));
    arc(PairScript.at(5_000).square(110, 18, 50, 2));
    assertEquals(Level.GREEN, judge.level());
  }

  @Test
  void shouldBeginEachSegmentUnjudged() {
    begin(FILL);
    arc(-200, -30, 2);
    assertEquals(Level.RED, judge.level());
    begin(FILL);
    assertNull(judge.level());
    assertNull(judge.shown());
    assertEquals(0, judge.average().pairs());
  }

  @Test
  void shouldRefuseARuleOutOfRange() {
    IllegalArgumentException refused =
        assertThrows(IllegalArgumentException.class, () -> new JudgingRule(100, 100, -1, 30));
    assertTrue(refused.getMessage().contains("holdSlots=-1"), refused.getMessage());
  }
}
