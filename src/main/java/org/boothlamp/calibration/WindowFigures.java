package org.boothlamp.calibration;

/**
 * What an averaging window holds, in counts. Immutable.
 *
 * @param seconds length held so far
 * @param isFull true if that is the whole averaging time
 * @param readings single readings behind the mean
 * @param mean NaN without readings
 * @param standardDeviation of the single readings, n - 1 in the denominator
 * @param firstHalfDeviation the same of the older half alone
 * @param secondHalfDeviation of the newer half
 * @param drift change from the start to the end of a line fitted through it
 * @param driftStandardError of that change; NaN for less than three slots
 * @param clipped readings at the converter's lowest or highest count
 * @param reference the meter's readings over the same time
 */
public record WindowFigures(
    double seconds,
    boolean isFull,
    long readings,
    double mean,
    double standardDeviation,
    double firstHalfDeviation,
    double secondHalfDeviation,
    double drift,
    double driftStandardError,
    long clipped,
    ReferenceFigures reference) {

  /** The point these figures make with a reference reading, kept. */
  public CalibrationPoint point(double level, Direction direction, double referenceReading) {
    return new CalibrationPoint(
        level, direction, mean, standardDeviation, readings, drift, referenceReading, null);
  }
}
