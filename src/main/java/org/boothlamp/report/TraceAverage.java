package org.boothlamp.report;

import java.util.Arrays;

/**
 * Trailing mean of one channel of a trace over the arc-on points of a second, point by point. The
 * live average stands on slots of 0.01 s: the two differ by what half a point can hold.
 */
final class TraceAverage {

  /** Points of less current are arc-outs. */
  static final double LEAST_AMPS = 9;

  private static final int POINTS = (int) Math.round(1 / RunTrace.POINT_SECONDS);

  private TraceAverage() {}

  /**
   * The averages of a direct current.
   *
   * @param amps signed means of the current, which tell where the arc burns
   * @param values signed means of the channel
   * @param fault where the lamp showed fault: the average begins anew after it
   * @return NaN where there is none
   */
  static double[] of(double[] amps, double[] values, boolean[] fault) {
    double[] averages = new double[amps.length];
    double[] ring = new double[POINTS];
    int held = 0;
    for (int k = 0; k < amps.length; k++) {
      if (fault[k]) {
        held = 0;
      } else if (k > 0 && Math.abs(amps[k]) >= LEAST_AMPS) {
        // The first point holds the start of the arc.
        ring[held++ % POINTS] = Math.abs(values[k]);
      }
      int filled = Math.min(held, POINTS);
      averages[k] = Arrays.stream(ring, 0, filled).average().orElse(Double.NaN);
    }
    return averages;
  }
}
