package org.boothlamp.calibration;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import org.boothlamp.signal.ChannelScale;
import org.junit.jupiter.api.Test;

/** A curve must show where R² does not show it, and a display's rounding must not look like one. */
class CurvatureTestTest {

  /** NIST StRD Pontius, load cell calibration: load, run 1, run 2. */
  private static final String PONTIUS =
      "150000,.11019,.11052;300000,.21956,.22018;450000,.32949,.32939;600000,.43899,.43886;"
          + "750000,.54803,.54798;900000,.65694,.65739;1050000,.76562,.76596;1200000,.87487,.87474;"
          + "1350000,.98292,.98300;1500000,1.09146,1.09150;1650000,1.20001,1.20004;"
          + "1800000,1.30822,1.30818;1950000,1.41599,1.41613;2100000,1.52399,1.52408;"
          + "2250000,1.63194,1.63159;2400000,1.73947,1.73965;2550000,1.84646,1.84696;"
          + "2700000,1.95392,1.95445;2850000,2.06128,2.06177;3000000,2.16844,2.16829";

  /** Near the slope, so that the gain is about 1. */
  private static final ChannelScale LOAD_CELL = new ChannelScale(7.2e-7, 0);

  private static CalibrationRun pontius(Direction secondRun) {
    List<CalibrationPoint> points = new ArrayList<>();
    for (int column = 1; column <= 2; column++) {
      for (String row : PONTIUS.split(";")) {
        double load = Double.parseDouble(row.split(",")[0]);
        double value = Double.parseDouble(row.split(",")[column]);
        Direction direction = column == 1 ? Direction.RISING : secondRun;
        points.add(new CalibrationPoint(load, direction, load, 0, 1, 0, value, null));
      }
    }
    return new CalibrationRun(
        Channel.VOLTAGE, LOAD_CELL, 2.2, Runs.TODAY, "T7", Runs.meter(0.01, 1, 1e-5), points);
  }

  /** Straight-line values and F recomputed with NumPy and SciPy; the data is NIST's. */
  @Test
  void shouldSeeThatPontiusIsNoStraightLine() {
    CalibrationResult result =
        LineFit.fit(PointTable.of(pontius(Direction.RISING), Weighting.ORDINARY));
    StraightLine line = result.line();
    assertEquals(6.149684210526e-3, line.offset(), 1e-14);
    assertEquals(7.221025814536e-7, line.gain() * LOAD_CELL.unitsPerCount(), 1e-18);
    assertEquals(2.171272596057e-3, line.residualStandardDeviation(), 1e-14);
    assertEquals(0.999988519115, result.rSquared(), 1e-12);
    assertEquals(4.110071428571602e-3, result.linearityError(), 1e-14);
    LackOfFit misfit = result.lackOfFit();
    assertEquals(LackOfFit.Method.PURE_ERROR, misfit.method());
    assertEquals(18, misfit.numeratorDegreesOfFreedom());
    assertEquals(20, misfit.denominatorDegreesOfFreedom());
    assertEquals(214.74692365392818, misfit.f(), 1e-7);
    assertEquals(5.503717381780022e-19, misfit.p(), 1e-26);
  }

  @Test
  void shouldRefusePontiusAlthoughRSquaredIsNearlyOne() {
    CalibrationOutcome outcome = Runs.evaluate(pontius(Direction.FALLING));
    assertTrue(outcome.result().rSquared() > 0.9999);
    assertEquals(
        List.of(RefusalReason.CURVED),
        outcome.verdict().refusals().stream().map(Refusal::reason).toList());
  }

  /** NIST's certified quadratic residual standard deviation stands behind this F. */
  @Test
  void shouldFindTheCurveOfOneRunByItsQuadraticTerm() {
    CalibrationRun both = pontius(Direction.RISING);
    CalibrationRun one = both.withPoints(both.points().subList(0, 20));
    LackOfFit misfit = LineFit.fit(PointTable.of(one, Weighting.ORDINARY)).lackOfFit();
    assertEquals(LackOfFit.Method.QUADRATIC_TERM, misfit.method());
    assertEquals(1, misfit.numeratorDegreesOfFreedom());
    assertEquals(17, misfit.denominatorDegreesOfFreedom());
    assertTrue(misfit.f() > 1000, "F = " + misfit.f());
    assertTrue(misfit.isSignificant());
  }

  /** NIST StRD Pontius: certified coefficients and residual standard deviation of the quadratic. */
  @Test
  void shouldFitTheCertifiedQuadraticOfPontius() {
    List<CalibrationPoint> points = pontius(Direction.RISING).points();
    double[][] rows = new double[points.size()][];
    double[] values = new double[points.size()];
    for (int i = 0; i < rows.length; i++) {
      double megaload = points.get(i).level() / 1e6;
      rows[i] = new double[] {1, megaload, megaload * megaload};
      values[i] = points.get(i).reference();
    }
    LeastSquares fit = LeastSquares.ordinary(rows, values);
    assertEquals(0.673565789473684e-3, fit.coefficient(0), 1e-14);
    assertEquals(0.732059160401003, fit.coefficient(1), 1e-13);
    assertEquals(-0.316081871345029e-2, fit.coefficient(2), 1e-14);
    assertEquals(0.107938612033077e-3, Math.sqrt(fit.covariance(0, 0)), 1e-15);
    assertEquals(0.157817399981659e-3, Math.sqrt(fit.covariance(1, 1)), 1e-15);
    assertEquals(0.486652849992036e-4, Math.sqrt(fit.covariance(2, 2)), 1e-15);
    assertEquals(0.205177424076185e-3, Math.sqrt(fit.variance()), 1e-15);
  }

  /** Both from SciPy. */
  @Test
  void shouldGiveTheUpperTailOfFishersF() {
    assertEquals(0.05483863619793799, CurvatureTest.upperTail(3.5, 4, 9), 1e-12);
    assertEquals(0.08253812272888682, CurvatureTest.upperTail(4.1, 1, 7), 1e-12);
    assertEquals(1, CurvatureTest.upperTail(0, 4, 9), 0);
  }

  /**
   * Equal displays at every level leave no scatter at all; half a step off the line is no curve.
   */
  @Test
  void shouldNotTakeTheDisplaysRoundingForACurve() {
    List<CalibrationPoint> points = new ArrayList<>();
    for (int level = 0; level <= 400; level += 80) {
      double shown = Math.rint(level * 1.0013);
      points.add(Runs.point(level, Direction.RISING, Runs.CLAMP.toCount(level), shown));
      points.add(Runs.point(level, Direction.FALLING, Runs.CLAMP.toCount(level), shown));
    }
    CalibrationRun run =
        new CalibrationRun(
            Channel.CURRENT, Runs.CLAMP, 400, Runs.TODAY, "T7", Runs.meter(0.1, 1, 1), points);
    LackOfFit misfit = LineFit.fit(PointTable.of(run, Weighting.ORDINARY)).lackOfFit();
    assertFalse(misfit.isSignificant(), "p = " + misfit.p());
  }

  @Test
  void shouldSayThatItCannotTestFourPointsOfOneLoop() {
    CalibrationRun run = Runs.soundClamp();
    List<CalibrationPoint> four =
        List.of(
            run.points().get(0), run.points().get(5), run.points().get(6), run.points().get(11));
    assertEquals(
        LackOfFit.NOT_TESTED,
        LineFit.fit(PointTable.of(run.withPoints(four), Weighting.ORDINARY)).lackOfFit());
  }
}
