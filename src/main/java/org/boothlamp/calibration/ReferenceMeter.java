package org.boothlamp.calibration;

import java.time.LocalDate;

/**
 * The meter the sensor is held against. Its accuracy is a limit of error, as data sheets give it: a
 * share of the reading plus a number of steps of the last digit. Immutable.
 *
 * @param make free text
 * @param serialNumber not blank
 * @param certificateNumber not blank
 * @param certificateDate day of its own calibration
 * @param accuracyPercentOfReading at least 0
 * @param accuracyCounts steps of {@code resolution}, at least 0
 * @param resolution one step of the last digit, in amps or volts, at least 0
 */
public record ReferenceMeter(
    String make,
    String serialNumber,
    String certificateNumber,
    LocalDate certificateDate,
    double accuracyPercentOfReading,
    double accuracyCounts,
    double resolution) {

  public ReferenceMeter {
    requireText("serial number", serialNumber);
    requireText("certificate number", certificateNumber);
    requireNotNegative("accuracy in % of reading", accuracyPercentOfReading);
    requireNotNegative("accuracy in counts", accuracyCounts);
    requireNotNegative("resolution", resolution);
  }

  /** The largest error the data sheet allows at a reading, in its unit. */
  public double errorLimit(double reading) {
    return accuracyPercentOfReading / 100 * Math.abs(reading) + accuracyCounts * resolution;
  }

  private static void requireText(String what, String text) {
    if (text == null || text.isBlank()) {
      throw new IllegalArgumentException(
          "reference meter: " + what + " is missing; copy it from the meter or its certificate");
    }
  }

  private static void requireNotNegative(String what, double value) {
    if (!(value >= 0) || Double.isInfinite(value)) {
      throw new IllegalArgumentException(
          "reference meter: "
              + what
              + " must be a number from 0 on, is "
              + value
              + "; copy it from the meter's data sheet");
    }
  }
}
