package org.boothlamp.monitor;

import org.boothlamp.judging.Signal;

/**
 * What a monitor saw at one moment. Mutable and reusable, with fixed memory; confined to one
 * thread. Of the trace points the latest {@link LiveFeed#POINTS} are there: point number {@code n},
 * counted from the monitor's start, is at {@code n % POINTS} of each array.
 */
public final class LiveSnapshot {

  /** What the lamp is told to show. */
  public Signal signal = Signal.DARK;

  /** Trailing average as it is judged, A: mean, or RMS at alternating current; NaN without arc. */
  public double amps = Double.NaN;

  /** Likewise, V. */
  public double volts = Double.NaN;

  /** Length of the running segment, s; 0 while none runs. */
  public double arcSeconds;

  /** True from the confirmation of an arc to the end of its segment. */
  public boolean arc;

  /** Who welds, against what. */
  public Assignment assignment = Assignment.NONE;

  /** Steps of the monitor so far; if this stands still, all of it is stale. */
  public long steps;

  /** Number of the contact that runs or ran last, from 1; touches count too. */
  public int run;

  /** Trace points since the monitor's start. */
  public long points;

  /** Contact that each point belongs to. */
  public final int[] pointRun = new int[LiveFeed.POINTS];

  /** Number of the point in its contact, from 0: 0.05 s each. */
  public final int[] pointIndex = new int[LiveFeed.POINTS];

  /** Mean current of the 0.05 s, A; NaN where nothing was measured, and at alternating current. */
  public final float[] pointAmps = new float[LiveFeed.POINTS];

  /** Mean voltage, V, likewise. */
  public final float[] pointVolts = new float[LiveFeed.POINTS];

  /** What the trailing average was at its end, A; NaN while it was not judged. */
  public final float[] pointAverageAmps = new float[LiveFeed.POINTS];

  /** Likewise, V. */
  public final float[] pointAverageVolts = new float[LiveFeed.POINTS];

  /** Number of the oldest point that is still there. */
  public long firstPoint() {
    return Math.max(0, points - LiveFeed.POINTS);
  }

  void set(LiveSnapshot other) {
    signal = other.signal;
    amps = other.amps;
    volts = other.volts;
    arcSeconds = other.arcSeconds;
    arc = other.arc;
    assignment = other.assignment;
    steps = other.steps;
    run = other.run;
    points = other.points;
    System.arraycopy(other.pointRun, 0, pointRun, 0, LiveFeed.POINTS);
    System.arraycopy(other.pointIndex, 0, pointIndex, 0, LiveFeed.POINTS);
    System.arraycopy(other.pointAmps, 0, pointAmps, 0, LiveFeed.POINTS);
    System.arraycopy(other.pointVolts, 0, pointVolts, 0, LiveFeed.POINTS);
    System.arraycopy(other.pointAverageAmps, 0, pointAverageAmps, 0, LiveFeed.POINTS);
    System.arraycopy(other.pointAverageVolts, 0, pointAverageVolts, 0, LiveFeed.POINTS);
  }
}
