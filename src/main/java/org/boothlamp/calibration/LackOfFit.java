package org.boothlamp.calibration;

/**
 * A test whether a straight line is the right model at all, which R² cannot tell. Immutable.
 *
 * @param method what the scatter about the line was held against
 * @param f the ratio of variances; 0 if not tested
 * @param numeratorDegreesOfFreedom 0 if not tested
 * @param denominatorDegreesOfFreedom 0 if not tested
 * @param p how often chance alone would give this ratio or more, 0 to 1; 1 if not tested
 */
public record LackOfFit(
    Method method,
    double f,
    int numeratorDegreesOfFreedom,
    int denominatorDegreesOfFreedom,
    double p) {

  /** How it was tested. */
  public enum Method {
    /** Levels about the line against the scatter of points of one level. */
    PURE_ERROR,
    /** What a quadratic term explains against what it leaves. */
    QUADRATIC_TERM,
    /** Too few points for either. */
    NOT_TESTED
  }

  static final LackOfFit NOT_TESTED = new LackOfFit(Method.NOT_TESTED, 0, 0, 0, 1);

  /** True if chance is not a believable reason for the misfit. */
  public boolean isSignificant() {
    return p < CalibrationRules.SIGNIFICANCE;
  }
}
