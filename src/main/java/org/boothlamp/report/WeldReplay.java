package org.boothlamp.report;

import java.util.List;
import org.boothlamp.judging.Signal;
import org.boothlamp.signal.Polarity;

/**
 * A logged run to be looked at again, moment by moment. Seconds count from the start of the run.
 * Immutable but for the arrays of its trace.
 */
public final class WeldReplay {

  /** Seconds of one frame. */
  public static final double FRAME_SECONDS = RunTrace.POINT_SECONDS;

  private final RunRecord run;
  private final WeldTrace trace;
  private final List<EventRecord> faults;
  private final double[] averageAmps;
  private final double[] averageVolts;

  /**
   * A run with what else is known of it.
   *
   * @param run its figures
   * @param trace its amps and volts
   * @param faults events of the same start of the monitor in which the lamp was in fault
   */
  public WeldReplay(RunRecord run, WeldTrace trace, List<EventRecord> faults) {
    this.run = run;
    this.trace = trace;
    this.faults = List.copyOf(faults);
    boolean[] fault = new boolean[trace.size()];
    for (int k = 0; k < fault.length; k++) {
      fault[k] = trace.signals()[k] == Signal.FAULT;
    }
    averageAmps = TraceAverage.of(trace.meanAmps(), trace.meanAmps(), fault);
    averageVolts = TraceAverage.of(trace.meanAmps(), trace.meanVolts(), fault);
  }

  /** The run. */
  public RunRecord run() {
    return run;
  }

  /** Number of frames; 0 if the run has no trace. */
  public int frames() {
    return trace.size();
  }

  /** Length of the run, or of its trace where that is longer, s. */
  public double lengthSeconds() {
    double traced = trace.size() * FRAME_SECONDS;
    return Double.isNaN(run.lengthSeconds()) ? traced : Math.max(run.lengthSeconds(), traced);
  }

  /** A frame from 0 on; beyond the last one, that the run is over. */
  public ReplayFrame frame(int index) {
    double seconds = index * FRAME_SECONDS;
    if (index >= trace.size()) {
      return ReplayFrame.over(seconds);
    }
    boolean direct = !isAlternating();
    double none = Double.NaN;
    return new ReplayFrame(
        seconds,
        direct ? Math.abs(trace.meanAmps()[index]) : none,
        lowest(trace.lowestAmps()[index], trace.highestAmps()[index]),
        highest(trace.lowestAmps()[index], trace.highestAmps()[index]),
        direct ? Math.abs(trace.meanVolts()[index]) : none,
        lowest(trace.lowestVolts()[index], trace.highestVolts()[index]),
        highest(trace.lowestVolts()[index], trace.highestVolts()[index]),
        direct ? averageAmps[index] : none,
        direct ? averageVolts[index] : none,
        trace.signals()[index]);
  }

  private static double lowest(double low, double high) {
    return low * high < 0 ? 0 : Math.min(Math.abs(low), Math.abs(high));
  }

  private static double highest(double low, double high) {
    return Math.max(Math.abs(low), Math.abs(high));
  }

  /** True for AC, of which the trace has no means. */
  public boolean isAlternating() {
    return run.polarity() == Polarity.AC;
  }

  /** True if nothing arrived in the time of this frame. */
  boolean isMissing(int index) {
    return Double.isNaN(trace.meanAmps()[index]);
  }

  /** True if the current was off for the whole of this frame, and the run not at its end. */
  boolean isArcOut(int index) {
    return index > 0
        && index < trace.size() - 1
        && Math.max(Math.abs(trace.lowestAmps()[index]), Math.abs(trace.highestAmps()[index]))
            < TraceAverage.LEAST_AMPS;
  }

  /** The word of a fault that covers a moment of the run; empty if none is known. */
  String faultAt(double seconds) {
    double since = run.startSeconds() + seconds;
    for (EventRecord fault : faults) {
      boolean ended = since > fault.startSeconds() + fault.lengthSeconds();
      if (since >= fault.startSeconds() && !ended) {
        return fault.what();
      }
    }
    return "";
  }
}
