package org.boothlamp.calibration;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import org.boothlamp.signal.ChannelScale;
import org.boothlamp.signal.PairScale;
import org.junit.jupiter.api.Test;

/** A sound calibration from points to scale, as found and as left. */
class CalibrationTest {

  private final CalibrationOutcome outcome = Runs.evaluate(Runs.soundClamp());

  @Test
  void shouldFindGainAndOffsetOfASoundClamp() {
    StraightLine line = outcome.result().line();
    assertEquals(1.04, line.gain(), 4 * line.gainStandardUncertainty());
    assertEquals(-3 * 1.04, line.offset(), 4 * line.offsetStandardUncertainty());
    assertTrue(line.gainStandardUncertainty() < 0.001);
    assertEquals(12 - 3, line.degreesOfFreedom());
  }

  @Test
  void shouldAcceptASoundClampForAYear() {
    assertEquals(List.of(), outcome.verdict().refusals());
    assertTrue(outcome.verdict().isAccepted());
    assertEquals(Runs.TODAY.plusMonths(12), outcome.verdict().nextDue());
  }

  @Test
  void shouldScaleCountsToTheReferencesValues() {
    ChannelScale scale = outcome.calibratedScale();
    for (double amps : new double[] {0, 55, 120, 399}) {
      double shown = scale.toUnits(Runs.lowByFourPercent(amps));
      assertEquals(amps, shown, outcome.uncertainty().expandedAt(amps));
      double nominal = Runs.CLAMP.toUnits(Runs.lowByFourPercent(amps));
      assertEquals(outcome.result().line().valueAt(nominal), shown, 1e-9);
    }
  }

  @Test
  void shouldReplaceTheScaleOfItsOwnChannelOnly() {
    PairScale pair = new PairScale(Runs.CLAMP, new ChannelScale(0.01, 3));
    ChannelScale scale = outcome.calibratedScale();
    assertEquals(new PairScale(scale, pair.voltage()), Channel.CURRENT.replace(pair, scale));
    assertEquals(new PairScale(pair.current(), scale), Channel.VOLTAGE.replace(pair, scale));
    assertEquals(pair.voltage(), Channel.VOLTAGE.of(pair));
    assertEquals(pair.current(), Channel.CURRENT.of(pair));
  }

  /** 400 A true shows 387.6: an error of 12.4 A where 10 A are allowed. */
  @Test
  void shouldSayHowTheClampWasFoundAndHowItIsLeft() {
    Conformity found = outcome.verdict().asFound();
    assertEquals(Conformity.Decision.FAILS, found.decision());
    assertEquals(400, found.reference());
    assertEquals(400 / 1.04 + 3 - 400, found.error(), 0.4);
    assertEquals(10, found.errorLimit(), 1e-12);
    Conformity left = outcome.verdict().asLeft();
    assertEquals(Conformity.Decision.CONFORMS, left.decision());
    assertTrue(Math.abs(left.error()) < 0.5);
  }

  @Test
  void shouldFindNoFaultInTheScaleItGaveItself() {
    CalibrationRun run = Runs.soundClamp();
    CalibrationOutcome again =
        Calibration.evaluate(run, outcome.calibratedScale(), CalibrationRules.STANDARD);
    assertEquals(again.verdict().asLeft(), again.verdict().asFound());
  }

  /** ANSI/NCSL Z540.3: tolerance span over twice U95 of the process, the definition from memory. */
  @Test
  void shouldShowTheTestUncertaintyRatio() {
    double process = outcome.uncertainty().processExpandedAt(400);
    assertEquals(2 * 10 / (2 * process), outcome.verdict().testUncertaintyRatio(), 0.05);
    assertTrue(process < outcome.uncertainty().expandedAt(400));
  }

  @Test
  void shouldReportTheWidthOfTheLoop() {
    CalibrationOutcome wide = Runs.evaluate(Runs.clamp(6, 400, Runs::lowByFourPercent, 1.6));
    assertEquals(1.6 * 1.04, wide.result().line().loopWidth(), 0.15);
    assertEquals(1.6 * 1.04, wide.result().hysteresis(), 0.3);
    assertEquals(
        outcome.result().line().residualStandardDeviation(),
        wide.result().line().residualStandardDeviation(),
        1e-9);
  }

  @Test
  void shouldFlagAnOutlierAndLeaveItToThePerson() {
    CalibrationRun run = Runs.soundClamp();
    List<CalibrationPoint> points = new ArrayList<>(run.points());
    CalibrationPoint slip = points.get(3);
    points.set(3, Runs.point(slip.level(), slip.direction(), slip.meanCounts(), 246));
    CalibrationRun slipped = run.withPoints(points);
    List<PointResidual> outliers = Runs.evaluate(slipped).result().outliers();
    assertEquals(List.of(points.get(3)), outliers.stream().map(PointResidual::point).toList());
    assertEquals(12, Runs.evaluate(slipped).result().residuals().size());
    assertEquals(List.of(), outcome.result().outliers());
  }

  @Test
  void shouldKeepAThrownAwayPointOutOfTheFitAndInTheRecord() {
    CalibrationRun run = Runs.soundClamp();
    List<CalibrationPoint> points = new ArrayList<>(run.points());
    points.add(Runs.point(240, Direction.RISING, 4000, 10).discarded("lead came off"));
    CalibrationOutcome with = Runs.evaluate(run.withPoints(points));
    assertEquals(outcome.result(), with.result());
    assertEquals(13, with.run().points().size());
    assertThrows(IllegalArgumentException.class, () -> points.get(0).discarded(" "));
  }

  @Test
  void shouldScaleNothingWhenRefused() {
    CalibrationRun run = Runs.soundClamp();
    CalibrationOutcome refused = Runs.evaluate(run.withPoints(run.points().subList(0, 3)));
    assertFalse(refused.verdict().isAccepted());
    assertThrows(IllegalStateException.class, refused::calibratedScale);
    assertNull(refused.result());
    assertNull(refused.verdict().asFound());
  }

  @Test
  void shouldAgreeWithItselfWhenEveryPointWeighsTheSame() {
    CalibrationRules weighted = CalibrationRules.STANDARD.withWeighting(Weighting.BY_UNCERTAINTY);
    CalibrationOutcome other = Calibration.evaluate(Runs.soundClamp(), Runs.CLAMP, weighted);
    StraightLine line = outcome.result().line();
    assertEquals(line.gain(), other.result().line().gain(), 1e-12);
    assertEquals(line.offset(), other.result().line().offset(), 1e-10);
  }
}
