package org.boothlamp.calibration;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.SplittableRandom;
import org.boothlamp.judging.ExpandedUncertainty;
import org.junit.jupiter.api.Test;

/** The budget line by line, and the two numbers that judging takes of it. */
class UncertaintyModelTest {

  private static final CalibrationRules RULES =
      CalibrationRules.STANDARD.withTemperature(new TemperatureAllowance(0.1, 0.002));

  private final CalibrationOutcome outcome =
      Calibration.evaluate(Runs.soundClamp(), Runs.CLAMP, RULES);

  private static double share(UncertaintyBudget budget, String name) {
    return budget.lines().stream()
        .filter(line -> line.name().equals(name))
        .mapToDouble(UncertaintyLine::standardUncertainty)
        .findFirst()
        .orElseThrow();
  }

  @Test
  void shouldListEveryInfluence() {
    assertEquals(
        List.of(
            UncertaintyModel.REPEATABILITY,
            UncertaintyModel.FIT,
            UncertaintyModel.METER,
            UncertaintyModel.METER_RESOLUTION,
            UncertaintyModel.SENSOR_RESOLUTION,
            UncertaintyModel.HYSTERESIS,
            UncertaintyModel.TEMPERATURE),
        outcome.uncertainty().at(100).lines().stream().map(UncertaintyLine::name).toList());
  }

  @Test
  void shouldValueEachInfluenceAsStated() {
    UncertaintyBudget budget = outcome.uncertainty().at(200);
    StraightLine line = outcome.result().line();
    double root3 = Math.sqrt(3);
    assertEquals(
        line.residualStandardDeviation(), share(budget, UncertaintyModel.REPEATABILITY), 1e-15);
    assertEquals(
        line.standardUncertaintyAt(line.nominalAt(200)),
        share(budget, UncertaintyModel.FIT),
        1e-15);
    assertEquals((0.2 + 0.3) / root3, share(budget, UncertaintyModel.METER), 1e-12);
    assertEquals(0.05 / root3, share(budget, UncertaintyModel.METER_RESOLUTION), 1e-12);
    assertEquals(
        0.1 * line.gain() / root3, share(budget, UncertaintyModel.SENSOR_RESOLUTION), 1e-12);
    assertEquals(
        Math.abs(line.loopWidth()) / 2 / root3, share(budget, UncertaintyModel.HYSTERESIS), 1e-12);
    assertEquals((0.1 + 0.4) / root3, share(budget, UncertaintyModel.TEMPERATURE), 1e-12);
  }

  @Test
  void shouldAddInfluencesInQuadratureAndExpand() {
    UncertaintyBudget budget = outcome.uncertainty().at(200);
    double sum = 0;
    for (UncertaintyLine line : budget.lines()) {
      sum += line.standardUncertainty() * line.standardUncertainty();
    }
    assertEquals(Math.sqrt(sum), budget.combined(), 1e-14);
    assertEquals(budget.combined() * budget.coverageFactor(), budget.expanded(), 1e-14);
    assertTrue(budget.coverageFactor() >= 2);
  }

  /** Repeatability and fit are one estimate of scatter and count as one. */
  @Test
  void shouldCountTheScatterOnceInItsDegreesOfFreedom() {
    UncertaintyBudget budget = outcome.uncertainty().at(200);
    double scatter =
        Math.hypot(
            share(budget, UncertaintyModel.REPEATABILITY), share(budget, UncertaintyModel.FIT));
    double expected = 9 * Math.pow(budget.combined() / scatter, 4);
    assertEquals(expected, budget.effectiveDegreesOfFreedom(), 1e-9 * expected);
  }

  @Test
  void shouldBoundTheUncertaintyFromAboveWithoutMuchWaste() {
    for (CalibrationRun run : List.of(Runs.soundClamp(), noisyClamp(), bothWaysClamp())) {
      UncertaintyModel model = Calibration.evaluate(run, run.nominal(), RULES).uncertainty();
      ExpandedUncertainty bound = model.bound();
      SplittableRandom random = new SplittableRandom(11);
      for (int i = 0; i < 5_000; i++) {
        double reading = random.nextDouble(model.low(), model.high());
        double expanded = model.expandedAt(reading);
        assertTrue(bound.at(reading) >= expanded * (1 - 1e-12), () -> "at " + reading);
        assertTrue(bound.at(reading) < 1.5 * expanded, () -> "wasteful at " + reading);
      }
    }
  }

  @Test
  void shouldStateTheUncertaintyForTheSideThatWasCalibrated() {
    assertEquals(0, outcome.uncertainty().low());
    assertEquals(400, outcome.uncertainty().high());
    CalibrationRun both = bothWaysClamp();
    UncertaintyModel model = Runs.evaluate(both).uncertainty();
    assertEquals(-400, model.low());
    assertEquals(400, model.high());
  }

  private static CalibrationRun noisyClamp() {
    CalibrationRun run = Runs.soundClamp();
    SplittableRandom random = new SplittableRandom(5);
    return run.withPoints(
        run.points().stream()
            .map(
                p ->
                    Runs.point(
                        p.level(),
                        p.direction(),
                        p.meanCounts() + random.nextDouble(-8, 8),
                        p.reference()))
            .toList());
  }

  private static CalibrationRun bothWaysClamp() {
    CalibrationRun run = Runs.clamp(7, 800, amps -> Runs.lowByFourPercent(amps - 400), 0.2);
    return run.withPoints(
        run.points().stream()
            .map(
                p ->
                    Runs.point(p.level() - 400, p.direction(), p.meanCounts(), p.reference() - 400))
            .toList());
  }
}
