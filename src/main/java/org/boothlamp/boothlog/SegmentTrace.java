package org.boothlamp.boothlog;

import java.util.Arrays;
import org.boothlamp.judging.Signal;

/**
 * The trace of one segment in amps and volts, signed, electrode against work. Every array has one
 * value for each 0.05 s from the segment's start; NaN where nothing was measured. The arrays are
 * its own: do not change them.
 */
public final class SegmentTrace {

  /** Mean current, A. */
  public final double[] meanAmps;

  /** Lowest current, A. */
  public final double[] lowestAmps;

  /** Highest current, A. */
  public final double[] highestAmps;

  /** Mean voltage, V. */
  public final double[] meanVolts;

  /** Lowest voltage, V. */
  public final double[] lowestVolts;

  /** Highest voltage, V. */
  public final double[] highestVolts;

  /** What the lamp showed at the end of each point. */
  public final Signal[] signals;

  SegmentTrace(int points) {
    meanAmps = unknown(points);
    lowestAmps = unknown(points);
    highestAmps = unknown(points);
    meanVolts = unknown(points);
    lowestVolts = unknown(points);
    highestVolts = unknown(points);
    signals = new Signal[points];
    Arrays.fill(signals, Signal.DARK);
  }

  private static double[] unknown(int points) {
    double[] values = new double[points];
    Arrays.fill(values, Double.NaN);
    return values;
  }

  /** Number of points. */
  public int size() {
    return signals.length;
  }
}
