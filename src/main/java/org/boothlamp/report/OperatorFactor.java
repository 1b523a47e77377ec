package org.boothlamp.report;

/**
 * Operator factor, also called operating factor or arc-on factor: arc-on time over total time
 * (Handbook of Structural Steel Connection Design and Details, p. 231). Immutable.
 *
 * @param arcSeconds arc-on time of the runs whose time of day is known
 * @param shiftSeconds length of the shift
 * @param signedInSeconds how long the trainee was signed in during the shift; NaN if not known
 */
public record OperatorFactor(double arcSeconds, double shiftSeconds, double signedInSeconds) {

  /** Arc-on time over the shift, 0 to 1; NaN if the shift's length is not known. */
  public double ofShift() {
    return shiftSeconds > 0 ? arcSeconds / shiftSeconds : Double.NaN;
  }

  /** Arc-on time over the time signed in, 0 to 1; NaN if that is not known. */
  public double ofSignedIn() {
    return arcSeconds / signedInSeconds;
  }
}
