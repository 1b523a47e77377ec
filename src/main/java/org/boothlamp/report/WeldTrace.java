package org.boothlamp.report;

import org.boothlamp.judging.Signal;

/**
 * Amps and volts of a run as the log keeps them, signed, electrode against work: one value for each
 * {@link RunTrace#POINT_SECONDS} from the run's start, NaN where nothing was measured. The arrays
 * are its own: do not change them.
 *
 * @param meanAmps mean current
 * @param lowestAmps lowest current
 * @param highestAmps highest current
 * @param meanVolts mean voltage
 * @param lowestVolts lowest voltage
 * @param highestVolts highest voltage
 * @param signals what the lamp showed at the end of each point
 */
public record WeldTrace(
    double[] meanAmps,
    double[] lowestAmps,
    double[] highestAmps,
    double[] meanVolts,
    double[] lowestVolts,
    double[] highestVolts,
    Signal[] signals) {

  /** Number of points. */
  public int size() {
    return signals.length;
  }
}
