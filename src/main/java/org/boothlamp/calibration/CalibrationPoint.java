package org.boothlamp.calibration;

/**
 * One point as it was taken: the sensor's mean and the reference meter's reading at one level.
 * Nothing is judged here, so that a useless point can stay in the record too. Immutable.
 *
 * @param level the level that was to be set, in amps or volts; points of the same level belong
 *     together
 * @param direction from which side the level was approached
 * @param meanCounts mean of the sensor's counts while the level was stable
 * @param standardDeviationCounts of the single readings behind the mean, n - 1 in the denominator
 * @param readings how many the mean was taken over
 * @param driftCounts change of the reading from the start of the averaging time to its end
 * @param reference what the reference meter said, in amps or volts; by SCPI-1999 9.9E37 is an
 *     overload
 * @param discardReason why the point is not used; null if it is
 */
public record CalibrationPoint(
    double level,
    Direction direction,
    double meanCounts,
    double standardDeviationCounts,
    long readings,
    double driftCounts,
    double reference,
    String discardReason) {

  /** SCPI-1999 answers 9.9E37 for infinity and 9.91E37 for not-a-number. */
  private static final double SCPI_OVERLOAD = 9.9e37;

  public CalibrationPoint {
    if (discardReason != null && discardReason.isBlank()) {
      throw new IllegalArgumentException(
          "a point is thrown away with a reason: level=" + level + ", reason is blank; give one");
    }
  }

  public boolean isDiscarded() {
    return discardReason != null;
  }

  /** This point, kept in the record and out of the fit. */
  public CalibrationPoint discarded(String reason) {
    return new CalibrationPoint(
        level,
        direction,
        meanCounts,
        standardDeviationCounts,
        readings,
        driftCounts,
        reference,
        reason);
  }

  /** False if a number is missing, infinite or the meter's word for an overload. */
  public boolean isMeasured() {
    return Double.isFinite(level)
        && Double.isFinite(meanCounts)
        && standardDeviationCounts >= 0
        && Double.isFinite(standardDeviationCounts)
        && readings > 0
        && Math.abs(reference) < SCPI_OVERLOAD;
  }
}
