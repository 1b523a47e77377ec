package org.boothlamp.monitor;

import java.lang.invoke.VarHandle;
import org.boothlamp.judging.Signal;
import org.boothlamp.signal.PairScale;
import org.boothlamp.signal.PairSums;
import org.boothlamp.signal.Polarity;

/**
 * What the monitor sees now, all of one step, for whoever shows it live: the signal, the averages,
 * and the last {@link #POINTS} trace points.
 *
 * <pre>
 *   sampler --set, addPoint--> LiveFeed &lt;--read-- any number of readers, each with its own snapshot
 * </pre>
 *
 * <p>The sampler never waits for a reader: it counts a version up before and after each change, and
 * a reader that saw the version move reads again. Memory is fixed; nothing is created after
 * construction. The methods that change belong to the sampler's thread; {@link #read} to any.
 */
public final class LiveFeed {

  /** Trace points that are kept: 51.2 s of arc. */
  public static final int POINTS = 1_024;

  /** Odd while the sampler changes something. */
  private volatile long version;

  private final LiveSnapshot now = new LiveSnapshot();
  private int runPoints;

  void set(
      Signal signal, double amps, double volts, double arcSeconds, boolean arc, Assignment who) {
    beginChange();
    now.signal = signal;
    now.amps = amps;
    now.volts = volts;
    now.arcSeconds = arcSeconds;
    now.arc = arc;
    now.assignment = who;
    now.steps++;
    endChange();
  }

  /** Trace points from here on belong to another run. */
  void beginRun() {
    beginChange();
    now.run++;
    runPoints = 0;
    endChange();
  }

  /**
   * The next 0.05 s of the running contact.
   *
   * @param point of kind TRACE_POINT
   * @param average what is judged now; left out of points before the first that is judged
   */
  void addPoint(LogEntry point, PairScale scale, PairSums average, Polarity polarity) {
    boolean alternating = polarity == Polarity.AC;
    beginChange();
    int place = (int) (now.points % POINTS);
    now.pointRun[place] = now.run;
    now.pointIndex[place] = runPoints++;
    // The mean of an alternating current says nothing.
    now.pointAmps[place] =
        alternating ? Float.NaN : magnitude(scale.current().toUnits(point.meanCurrentCount));
    now.pointVolts[place] =
        alternating ? Float.NaN : magnitude(scale.voltage().toUnits(point.meanVoltageCount));
    boolean judged = point.signalCode > Signal.SETTLING.code();
    now.pointAverageAmps[place] = judged ? (float) amps(average, scale, polarity) : Float.NaN;
    now.pointAverageVolts[place] = judged ? (float) volts(average, scale, polarity) : Float.NaN;
    now.points++;
    endChange();
  }

  private static float magnitude(double signed) {
    return (float) Math.abs(signed);
  }

  static double amps(PairSums average, PairScale scale, Polarity polarity) {
    return polarity == Polarity.AC ? average.rmsAmps(scale) : average.meanAbsoluteAmps(scale);
  }

  static double volts(PairSums average, PairScale scale, Polarity polarity) {
    return polarity == Polarity.AC ? average.rmsVolts(scale) : average.meanAbsoluteVolts(scale);
  }

  /** Only this thread writes the version, so that counting it up is no race. */
  private void beginChange() {
    version = version + 1;
    VarHandle.fullFence();
  }

  private void endChange() {
    version = version + 1;
  }

  /** Fills a snapshot with what was true at one moment. */
  public void read(LiveSnapshot into) {
    while (!tryRead(into)) {
      Thread.onSpinWait();
    }
  }

  private boolean tryRead(LiveSnapshot into) {
    long before = version;
    if ((before & 1) != 0) {
      return false;
    }
    into.set(now);
    VarHandle.fullFence();
    return version == before;
  }
}
