package org.boothlamp.calibration;

/**
 * A fitted line from nominal reading to reference, kept about the middle of its data so that offset
 * and gain lose no digits. The offset at zero and the gain are strongly correlated; take an
 * uncertainty from {@link #standardUncertaintyAt}, never from the two alone. Immutable.
 *
 * @param centre the nominal reading the line is kept about
 * @param valueAtCentre fitted reference there
 * @param gain fitted reference per nominal reading
 * @param varianceAtCentre of {@code valueAtCentre}
 * @param covariance of {@code valueAtCentre} and {@code gain}
 * @param gainVariance of {@code gain}
 * @param loopWidth mean of rising minus falling reference at the same reading, which the fit takes
 *     out of the scatter; 0 if there are not both
 * @param residualStandardDeviation scatter of a point of mean weight about the fit
 * @param degreesOfFreedom points less fitted numbers, above 0
 */
public record StraightLine(
    double centre,
    double valueAtCentre,
    double gain,
    double varianceAtCentre,
    double covariance,
    double gainVariance,
    double loopWidth,
    double residualStandardDeviation,
    int degreesOfFreedom) {

  /** The reference expected at a nominal reading. */
  public double valueAt(double nominal) {
    return valueAtCentre + gain * (nominal - centre);
  }

  /** The nominal reading at which the line gives a value. */
  public double nominalAt(double value) {
    return centre + (value - valueAtCentre) / gain;
  }

  /** Standard uncertainty of the line itself at a nominal reading, covariance included. */
  public double standardUncertaintyAt(double nominal) {
    double distance = nominal - centre;
    return Math.sqrt(
        Math.max(
            0, varianceAtCentre + 2 * distance * covariance + distance * distance * gainVariance));
  }

  /** The reference expected at a nominal reading of 0. */
  public double offset() {
    return valueAt(0);
  }

  public double offsetStandardUncertainty() {
    return standardUncertaintyAt(0);
  }

  public double gainStandardUncertainty() {
    return Math.sqrt(gainVariance);
  }

  /** Correlation of offset and gain, -1 to 1. */
  public double correlation() {
    return correlationAt(0);
  }

  /** Correlation of the line's value at a nominal reading and the gain, -1 to 1; NaN if exact. */
  public double correlationAt(double nominal) {
    double shared = covariance + (nominal - centre) * gainVariance;
    return shared / (standardUncertaintyAt(nominal) * gainStandardUncertainty());
  }
}
