package org.boothlamp.calibration;

import java.util.List;

/**
 * What the checks of one calibration scatter about, as shares of their limits: the individuals
 * control chart with moving ranges of two (NIST/SEMATECH e-Handbook of Statistical Methods 6.3.2.2,
 * from memory). Immutable.
 *
 * @param centre mean
 * @param sigma standard deviation by the mean moving range, above 0
 */
public record ControlLimits(double centre, double sigma) {

  /** Mean range of two normal values over their standard deviation. */
  private static final double MEAN_RANGE_OF_TWO = 1.128;

  /** The control limits lie this many standard deviations off the centre. */
  private static final double SIGMAS = 3;

  /**
   * @param values at least 2, in order of time
   * @return null if they do not scatter at all
   */
  static ControlLimits of(List<Double> values) {
    double ranges = 0;
    for (int i = 1; i < values.size(); i++) {
      ranges += Math.abs(values.get(i) - values.get(i - 1));
    }
    double sigma = ranges / (values.size() - 1) / MEAN_RANGE_OF_TWO;
    double centre = values.stream().mapToDouble(Double::doubleValue).average().orElseThrow();
    return sigma > 0 ? new ControlLimits(centre, sigma) : null;
  }

  public double lower() {
    return centre - SIGMAS * sigma;
  }

  public double upper() {
    return centre + SIGMAS * sigma;
  }

  /** Distance from the centre in standard deviations. */
  double deviation(double value) {
    return (value - centre) / sigma;
  }
}
