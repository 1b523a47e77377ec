package org.boothlamp.calibration;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.IntToDoubleFunction;
import java.util.stream.IntStream;
import org.apache.commons.math3.distribution.TDistribution;

/**
 * The straight line through a run's points, and how well it suits them. Where points were taken
 * rising and falling, the fit has a third number, the mean width of the loop, so that hysteresis is
 * not taken for scatter.
 */
final class LineFit {

  private final PointTable points;
  private final double centre;
  private final double halfSpan;
  private final boolean loop;
  private final LeastSquares squares;
  private final StraightLine line;

  private LineFit(PointTable points) {
    this.points = points;
    double[] nominal = points.nominal;
    this.centre =
        IntStream.range(0, points.size()).mapToDouble(i -> nominal[i]).average().orElse(0);
    this.halfSpan =
        IntStream.range(0, points.size())
            .mapToDouble(i -> Math.abs(nominal[i] - centre))
            .max()
            .orElse(0);
    this.loop = points.hasLoop();
    this.squares = fit(1);
    this.line = line();
  }

  /**
   * @param points at least 4, of at least 2 different readings, all finite
   */
  static CalibrationResult fit(PointTable points) {
    return new LineFit(points).result();
  }

  private CalibrationResult result() {
    List<PointResidual> residuals = residuals();
    return new CalibrationResult(
        line,
        rSquared(residuals),
        residuals.stream().mapToDouble(r -> Math.abs(r.residual())).max().orElse(0),
        linearityError(),
        hysteresis(residuals),
        noisiestFactor(),
        new CurvatureTest(points, squares, this::fit).test(),
        residuals);
  }

  /** A polynomial of a degree in the centred reading, and the loop if there is one. */
  private LeastSquares fit(int degree) {
    double[][] rows = new double[points.size()][];
    for (int i = 0; i < rows.length; i++) {
      rows[i] = row(i, degree);
    }
    return new LeastSquares(rows, points.reference, points.weights);
  }

  private double[] row(int point, int degree) {
    double[] row = new double[degree + (loop ? 2 : 1)];
    double position = (points.nominal[point] - centre) / halfSpan;
    row[0] = 1;
    for (int power = 1; power <= degree; power++) {
      row[power] = row[power - 1] * position;
    }
    if (loop) {
      row[degree + 1] = points.directionStep(point);
    }
    return row;
  }

  private StraightLine line() {
    return new StraightLine(
        centre,
        squares.coefficient(0),
        squares.coefficient(1) / halfSpan,
        squares.covariance(0, 0),
        squares.covariance(0, 1) / halfSpan,
        squares.covariance(1, 1) / halfSpan / halfSpan,
        loop ? squares.coefficient(2) : 0,
        Math.sqrt(squares.variance()),
        squares.degreesOfFreedom());
  }

  private List<PointResidual> residuals() {
    List<PointResidual> out = new ArrayList<>();
    double limit = outlierLimit();
    for (int i = 0; i < points.size(); i++) {
      double fitted = line.valueAt(points.nominal[i]);
      double studentized = studentized(i);
      out.add(
          new PointResidual(
              points.points.get(i),
              points.nominal[i],
              fitted,
              points.reference[i] - fitted,
              studentized,
              Math.abs(studentized) > limit));
    }
    return out;
  }

  /** By Student's t for the worst of all points (Bonferroni); none with too few to tell. */
  private double outlierLimit() {
    int freedom = squares.degreesOfFreedom() - 1;
    if (freedom < 1) {
      return Double.POSITIVE_INFINITY;
    }
    double tail = CalibrationRules.SIGNIFICANCE / (2 * points.size());
    return new TDistribution(null, freedom).inverseCumulativeProbability(1 - tail);
  }

  /** Scatter below both displays' steps is not counted: it may be 0 by rounding alone. */
  private double studentized(int point) {
    int freedom = squares.degreesOfFreedom() - 1;
    double room = 1 - squares.leverage(point);
    if (freedom < 1 || room < 1e-9) {
      return 0;
    }
    double weight = points.weights[point];
    double residual = squares.residual(point);
    double others = (squares.sumOfSquares() - weight * residual * residual / room) / freedom;
    double variance = Math.max(others, points.resolutionVariance) * room / weight;
    return variance > 0 ? residual / Math.sqrt(variance) : 0;
  }

  private double rSquared(List<PointResidual> residuals) {
    double weightSum = 0;
    double sum = 0;
    for (int i = 0; i < points.size(); i++) {
      weightSum += points.weights[i];
      sum += points.weights[i] * points.reference[i];
    }
    double about = 0;
    double left = 0;
    for (int i = 0; i < points.size(); i++) {
      double distance = points.reference[i] - sum / weightSum;
      about += points.weights[i] * distance * distance;
      left += points.weights[i] * residuals.get(i).residual() * residuals.get(i).residual();
    }
    return 1 - left / about;
  }

  private double linearityError() {
    return points.levels.stream()
        .mapToDouble(level -> Math.abs(mean(level.all(), squares::residual)))
        .max()
        .orElse(0);
  }

  private double hysteresis(List<PointResidual> residuals) {
    return points.levels.stream()
        .filter(PointTable.Level::isBothWays)
        .mapToDouble(
            level ->
                Math.abs(
                    mean(level.rising(), i -> residuals.get(i).residual())
                        - mean(level.falling(), i -> residuals.get(i).residual())))
        .max()
        .orElse(Double.NaN);
  }

  private static double mean(List<Integer> rows, IntToDoubleFunction value) {
    return rows.stream().mapToDouble(value::applyAsDouble).average().orElse(0);
  }

  private double noisiestFactor() {
    double smallest = Arrays.stream(points.weights).min().orElse(1);
    return 1 / Math.sqrt(smallest);
  }
}
