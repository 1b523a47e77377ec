package org.boothlamp.calibration;

import org.boothlamp.signal.ChannelScale;

/**
 * A run with all that follows from it. Immutable.
 *
 * @param run what was taken down
 * @param result the fit; null if the points allow none, and then the verdict says why
 * @param uncertainty of a calibrated reading; null without a result, or if its gain is implausible
 * @param verdict accepted or refused
 */
public record CalibrationOutcome(
    CalibrationRun run, CalibrationResult result, UncertaintyModel uncertainty, Verdict verdict) {

  /**
   * The scale to measure with from now on.
   *
   * @throws IllegalStateException if the calibration was refused
   */
  public ChannelScale calibratedScale() {
    if (!verdict.isAccepted()) {
      throw new IllegalStateException(
          "a refused calibration scales nothing: " + verdict.refusals().get(0).message());
    }
    return result.calibrate(run.nominal());
  }
}
