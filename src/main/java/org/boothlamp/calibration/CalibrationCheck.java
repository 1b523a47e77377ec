package org.boothlamp.calibration;

/**
 * A quick look at one point between two calibrations, for the control chart. Immutable.
 *
 * @param channel which sensor
 * @param calibrationNumber the calibration in use then; 0 if there was none
 * @param wallMillis time of day, ms since the epoch
 * @param technicianCode who did it, never a name
 * @param meter free text: which meter
 * @param reference what the meter said, in amps or volts
 * @param reading mean of what the booth showed over the same time, likewise
 * @param standardDeviation of the single readings behind the mean, likewise
 * @param readings how many the mean was taken over
 * @param limit the largest |error| that passes, likewise
 */
public record CalibrationCheck(
    Channel channel,
    long calibrationNumber,
    long wallMillis,
    String technicianCode,
    String meter,
    double reference,
    double reading,
    double standardDeviation,
    long readings,
    double limit) {

  /** What the booth shows less what is true. */
  public double error() {
    return reading - reference;
  }

  public boolean isPassed() {
    return Math.abs(error()) <= limit;
  }
}
