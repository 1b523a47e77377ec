package org.boothlamp.calibration;

/**
 * A reference meter's readings over an averaging time. Immutable.
 *
 * @param readings how many
 * @param mean in the meter's unit; NaN without readings
 * @param standardDeviation of the single readings, n - 1 in the denominator; NaN for less than two
 */
public record ReferenceFigures(long readings, double mean, double standardDeviation) {}
