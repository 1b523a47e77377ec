package org.boothlamp.technique;

import java.util.Arrays;
import org.apache.commons.math3.stat.descriptive.rank.Median;

/**
 * A straight line that a few points off it do not bend: slope as the median of the slopes of all
 * pairs (Theil 1950, Sen 1968), place as the median of what is left. Immutable.
 *
 * @param slope y per x; NaN if all x are equal
 * @param intercept y at x = 0
 * @param slopeUncertainty standard uncertainty of the slope
 */
record RobustLine(double slope, double intercept, double slopeUncertainty) {

  /** Points from which the residuals say anything. */
  private static final int LEAST_POINTS = 4;

  /** Standard deviation of a normal variable over its median absolute deviation. */
  static final double NORMAL_OVER_MEDIAN = 1.4826;

  /** Worst efficiency of the slope against least squares with normal errors, as a factor. */
  private static final double ROBUSTNESS_COST = 1.25;

  private static final RobustLine UNKNOWN =
      new RobustLine(Double.NaN, Double.NaN, Double.POSITIVE_INFINITY);

  static RobustLine through(double[] x, double[] y) {
    double[] slopes = slopes(x, y);
    if (x.length < LEAST_POINTS || slopes.length == 0) {
      return UNKNOWN;
    }
    double slope = median(slopes);
    double[] left = new double[x.length];
    for (int i = 0; i < x.length; i++) {
      left[i] = y[i] - slope * x[i];
    }
    double intercept = median(left);
    double scatter = NORMAL_OVER_MEDIAN * medianDistance(left, intercept);
    double spread = Math.sqrt(sumOfSquares(x));
    return new RobustLine(slope, intercept, ROBUSTNESS_COST * scatter / spread);
  }

  private static double[] slopes(double[] x, double[] y) {
    double[] slopes = new double[x.length * (x.length - 1) / 2];
    int count = 0;
    for (int i = 0; i < x.length; i++) {
      for (int j = i + 1; j < x.length; j++) {
        if (x[i] != x[j]) {
          slopes[count++] = (y[j] - y[i]) / (x[j] - x[i]);
        }
      }
    }
    return Arrays.copyOf(slopes, count);
  }

  static double median(double[] values) {
    return new Median().evaluate(values);
  }

  static double medianDistance(double[] values, double from) {
    double[] distances = new double[values.length];
    for (int i = 0; i < values.length; i++) {
      distances[i] = Math.abs(values[i] - from);
    }
    return median(distances);
  }

  private static double sumOfSquares(double[] values) {
    double mean = 0;
    for (double value : values) {
      mean += value / values.length;
    }
    double sum = 0;
    for (double value : values) {
      sum += (value - mean) * (value - mean);
    }
    return sum;
  }
}
