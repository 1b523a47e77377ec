package org.boothlamp.report;

import org.boothlamp.signal.PairScale;

/**
 * What the log keeps of a run besides its figures, to compute them again. Every array has one value
 * for each 0.05 s from the run's start and is its own: do not change them.
 *
 * @param scale counts to amps and volts, as the run was measured
 * @param zeroKnown true if the clamp's zero had been seen, so that no current was 0 A whatever zero
 *     the scale names
 * @param meanAmps signed mean current by that scale; NaN where nothing was measured
 * @param meanVolts signed mean voltage, likewise
 * @param fault true where the lamp showed fault
 */
public record RunTrace(
    PairScale scale, boolean zeroKnown, double[] meanAmps, double[] meanVolts, boolean[] fault) {

  /** Seconds of one value. */
  public static final double POINT_SECONDS = 0.05;

  /** Number of points. */
  public int size() {
    return meanAmps.length;
  }
}
