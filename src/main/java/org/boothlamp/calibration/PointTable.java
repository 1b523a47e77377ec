package org.boothlamp.calibration;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.TreeMap;
import java.util.stream.Stream;

/**
 * The used points of a run as columns for the fit. Immutable by convention: nobody writes to it.
 */
final class PointTable {

  /** Points of one level, by their row. */
  record Level(double level, List<Integer> rising, List<Integer> falling) {
    boolean isBothWays() {
      return !rising.isEmpty() && !falling.isEmpty();
    }

    List<Integer> all() {
      return Stream.concat(rising.stream(), falling.stream()).toList();
    }
  }

  final List<CalibrationPoint> points;
  final double[] nominal;
  final double[] reference;
  final double[] weights;

  /** By level, lowest first. */
  final List<Level> levels;

  /** Both displays' steps as a variance: scatter below this means nothing. */
  final double resolutionVariance;

  private PointTable(CalibrationRun run, Weighting weighting) {
    points = run.kept();
    nominal = points.stream().mapToDouble(p -> run.nominal().toUnits(p.meanCounts())).toArray();
    reference = points.stream().mapToDouble(CalibrationPoint::reference).toArray();
    levels = levelsOf(points);
    resolutionVariance =
        (square(run.sensorResolution()) + square(run.meter().resolution())) / Distribution.STEPS;
    weights = weighting == Weighting.ORDINARY ? ones() : byUncertainty(run);
  }

  static PointTable of(CalibrationRun run, Weighting weighting) {
    return new PointTable(run, weighting);
  }

  int size() {
    return points.size();
  }

  /** True if mean hysteresis can be told from the line: two levels or more approached both ways. */
  boolean hasLoop() {
    return levels.stream().filter(Level::isBothWays).count() >= 2;
  }

  /** Half a step up on rising, half a step down on falling. */
  double directionStep(int row) {
    return points.get(row).direction() == Direction.RISING ? 0.5 : -0.5;
  }

  static List<Level> levelsOf(List<CalibrationPoint> points) {
    TreeMap<Double, Level> levels = new TreeMap<>();
    for (int i = 0; i < points.size(); i++) {
      CalibrationPoint point = points.get(i);
      // adding 0 makes -0 and 0 the same level
      Level level =
          levels.computeIfAbsent(
              point.level() + 0.0, key -> new Level(key, new ArrayList<>(), new ArrayList<>()));
      (point.direction() == Direction.RISING ? level.rising() : level.falling()).add(i);
    }
    return List.copyOf(levels.values());
  }

  private double[] ones() {
    double[] ones = new double[size()];
    Arrays.fill(ones, 1);
    return ones;
  }

  /** Inverse variances of the points, of mean 1 so that the scatter keeps its unit. */
  private double[] byUncertainty(CalibrationRun run) {
    double[] inverse = points.stream().mapToDouble(p -> 1 / variance(p, run)).toArray();
    double mean = Arrays.stream(inverse).sum() / inverse.length;
    if (!Double.isFinite(mean)) {
      // a point without any uncertainty would swallow all others
      return ones();
    }
    return Arrays.stream(inverse).map(weight -> weight / mean).toArray();
  }

  private double variance(CalibrationPoint point, CalibrationRun run) {
    double scatter = run.sensorResolution() * point.standardDeviationCounts();
    return square(scatter) / point.readings() + resolutionVariance;
  }

  private static double square(double value) {
    return value * value;
  }
}
