package org.boothlamp.calibration;

import java.util.List;

/**
 * The straight line through the checks of one calibration over time, by least squares. Errors count
 * as shares of their limits. Immutable.
 *
 * @param sharePerMonth slope; a month is a twelfth of 365.25 days
 * @param expandedPerMonth U of the slope for 95.45 %, by Student's t
 * @param shareNow where the line is at the last check
 */
public record ControlDrift(double sharePerMonth, double expandedPerMonth, double shareNow) {

  private static final double MILLIS_A_MONTH = 365.25 / 12 * 86_400_000;

  /** Fewer leave hardly anything to tell the scatter from. */
  private static final int FEWEST = 4;

  /**
   * @param checks in order of time
   * @param shares their errors
   * @return null with too few of them, or if they were all made at once
   */
  static ControlDrift of(List<CalibrationCheck> checks, List<Double> shares) {
    int count = checks.size();
    if (count < FEWEST || checks.get(0).wallMillis() == checks.get(count - 1).wallMillis()) {
      return null;
    }
    long last = checks.get(count - 1).wallMillis();
    double[][] rows = new double[count][];
    for (int i = 0; i < count; i++) {
      rows[i] = new double[] {1, (checks.get(i).wallMillis() - last) / MILLIS_A_MONTH};
    }
    double[] values = shares.stream().mapToDouble(Double::doubleValue).toArray();
    LeastSquares line = LeastSquares.ordinary(rows, values);
    double factor = Coverage.factor(line.degreesOfFreedom(), Coverage.PROBABILITY);
    double expanded = factor * Math.sqrt(Math.max(0, line.covariance(1, 1)));
    return new ControlDrift(line.coefficient(1), expanded, line.coefficient(0));
  }

  /** True if the slope cannot be told from none only by chance. */
  public boolean isSignificant() {
    return Math.abs(sharePerMonth) > expandedPerMonth;
  }

  /** Months until the line reaches the limit it runs to; 0 if it is there, NaN if it does not. */
  public double monthsToLimit() {
    if (!isSignificant()) {
      return Double.NaN;
    }
    return Math.max(0, (Math.signum(sharePerMonth) - shareNow) / sharePerMonth);
  }
}
