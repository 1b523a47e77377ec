package org.boothlamp.calibration;

/**
 * One influence in an uncertainty budget. Immutable.
 *
 * @param name what it is, for people
 * @param distribution how its possible values are spread
 * @param value standard deviation or half width, in its own unit, at least 0
 * @param sensitivity change of the result for a change of the influence
 * @param degreesOfFreedom infinite where the value is known and not estimated
 */
public record UncertaintyLine(
    String name,
    Distribution distribution,
    double value,
    double sensitivity,
    double degreesOfFreedom) {

  /** A limit that is known: anything within plus or minus {@code halfWidth}. */
  static UncertaintyLine limit(String name, double halfWidth, double sensitivity) {
    return new UncertaintyLine(
        name, Distribution.RECTANGULAR, halfWidth, sensitivity, Double.POSITIVE_INFINITY);
  }

  /** What the value is divided by. */
  public double divisor() {
    return distribution.divisor();
  }

  /** Its share of the result's uncertainty, in the result's unit. */
  public double standardUncertainty() {
    return Math.abs(sensitivity) * value / divisor();
  }
}
