package org.boothlamp.report;

import org.boothlamp.judging.Signal;

/**
 * 0.05 s of a run. Amps and volts are absolute; NaN where nothing was measured, where the run is
 * over, and at AC, of whose points the log keeps the extremes only. Immutable.
 *
 * @param seconds start, seconds since the run's start
 * @param amps mean
 * @param lowestAmps lowest; 0 where the current changed its direction
 * @param highestAmps highest
 * @param volts mean
 * @param lowestVolts lowest; 0 where the voltage changed its direction
 * @param highestVolts highest
 * @param averageAmps mean of the arc-on points of the last second, as near as the trace tells what
 *     was judged
 * @param averageVolts likewise
 * @param signal what the lamp showed
 */
public record ReplayFrame(
    double seconds,
    double amps,
    double lowestAmps,
    double highestAmps,
    double volts,
    double lowestVolts,
    double highestVolts,
    double averageAmps,
    double averageVolts,
    Signal signal) {

  /** A moment at which the run is over. */
  static ReplayFrame over(double seconds) {
    double none = Double.NaN;
    return new ReplayFrame(seconds, none, none, none, none, none, none, none, none, Signal.IDLE);
  }
}
