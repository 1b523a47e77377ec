package org.boothlamp.testing;

import java.util.List;
import org.boothlamp.judging.ChannelUncertainties;
import org.boothlamp.judging.ExpandedUncertainty;
import org.boothlamp.judging.JudgingPlan;
import org.boothlamp.judging.Side;
import org.boothlamp.judging.Signal;
import org.boothlamp.monitor.Assignment;
import org.boothlamp.monitor.EventKind;
import org.boothlamp.monitor.LogEntry;
import org.boothlamp.monitor.SegmentEnd;
import org.boothlamp.monitor.SegmentFigures;
import org.boothlamp.procedure.Characteristic;
import org.boothlamp.procedure.Pass;
import org.boothlamp.procedure.Procedure;
import org.boothlamp.procedure.Process;
import org.boothlamp.procedure.Quantity;
import org.boothlamp.procedure.Window;
import org.boothlamp.signal.ChannelScale;
import org.boothlamp.signal.PairScale;
import org.boothlamp.signal.Polarity;

/**
 * Entries as the monitor would send them, with invented figures. Second 0 of the source is {@link
 * #FIRST_WALL_MILLIS} by the wall clock and 0 by the monotonic clock.
 */
public final class LogEntries {

  /** 2026-03-02T07:00Z. */
  public static final long FIRST_WALL_MILLIS = 1_772_434_800_000L;

  /** Scale of all entries: 0.1 A and 0.01 V a count, current zero at count 12. */
  public static final PairScale SCALE =
      new PairScale(new ChannelScale(0.1, 12), new ChannelScale(0.01, 0));

  /** Windows of the pass that all segments are judged by. */
  public static final List<Window> WINDOWS =
      List.of(
          new Window(Quantity.AMPS, 95, 125),
          new Window(Quantity.VOLTS, 20, 26),
          new Window(Quantity.ARC_S, 20, 90));

  /** A calibrated plan: procedure S-3F-18, revision 2, pass fill. */
  public static final JudgingPlan PLAN = plan();

  private LogEntries() {}

  private static JudgingPlan plan() {
    Pass fill = new Pass("fill", WINDOWS, Double.NaN, Double.NaN);
    Procedure procedure =
        new Procedure(
            "S-3F-18",
            "2",
            Process.MANUAL_METAL_ARC,
            Polarity.DC_PLUS,
            Characteristic.CONSTANT_CURRENT,
            Double.NaN,
            List.of(fill));
    return new JudgingPlan(
        procedure,
        fill,
        new ChannelUncertainties(
            new ExpandedUncertainty(0.5, 0), new ExpandedUncertainty(0.1, 0), true));
  }

  private static LogEntry entry(LogEntry.Kind kind, double startSeconds) {
    LogEntry entry = new LogEntry();
    entry.kind = kind;
    entry.startSeconds = startSeconds;
    entry.monotonicNanos = Math.round(startSeconds * 1e9);
    entry.wallMillis = FIRST_WALL_MILLIS + Math.round(startSeconds * 1e3);
    return entry;
  }

  /** A segment of a trainee begins, judged by {@link #PLAN}. */
  public static LogEntry started(double startSeconds, String trainee) {
    LogEntry entry = entry(LogEntry.Kind.SEGMENT_STARTED, startSeconds);
    entry.assignment = new Assignment(trainee, PLAN);
    entry.scale = SCALE;
    entry.pairsPerSecond = 5_000;
    return entry;
  }

  /** A segment begins with nobody signed in and no procedure. */
  public static LogEntry startedUnassigned(double startSeconds) {
    LogEntry entry = started(startSeconds, "");
    entry.assignment = Assignment.NONE;
    return entry;
  }

  /** A trace point of 100 A and 23 V under a green lamp. */
  public static LogEntry point(double startSeconds) {
    return point(startSeconds, 1_012, 2_300, Signal.GREEN);
  }

  /** A trace point around the given counts: 50 counts either way. */
  public static LogEntry point(
      double startSeconds, float currentCount, float voltageCount, Signal signal) {
    LogEntry entry = entry(LogEntry.Kind.TRACE_POINT, startSeconds);
    entry.meanCurrentCount = currentCount;
    entry.lowestCurrentCount = (short) (currentCount - 50);
    entry.highestCurrentCount = (short) (currentCount + 50);
    entry.meanVoltageCount = voltageCount;
    entry.lowestVoltageCount = (short) (voltageCount - 50);
    entry.highestVoltageCount = (short) (voltageCount + 50);
    entry.signalCode = (byte) signal.code();
    return entry;
  }

  /** An excursion of the running segment. */
  public static LogEntry excursion(
      double startSeconds, double lengthSeconds, Quantity quantity, Side side, double worst) {
    LogEntry entry = entry(LogEntry.Kind.EXCURSION, startSeconds);
    entry.lengthSeconds = lengthSeconds;
    entry.quantity = quantity;
    entry.side = side;
    entry.worst = worst;
    return entry;
  }

  /** Figures of the running segment so far. */
  public static LogEntry progress(double startSeconds, double lengthSeconds) {
    LogEntry entry = entry(LogEntry.Kind.SEGMENT_PROGRESS, startSeconds);
    fill(entry.figures, startSeconds, lengthSeconds);
    return entry;
  }

  /** The running segment ends. */
  public static LogEntry ended(double startSeconds, double lengthSeconds, SegmentEnd end) {
    LogEntry entry = entry(LogEntry.Kind.SEGMENT_ENDED, startSeconds);
    fill(entry.figures, startSeconds, lengthSeconds);
    entry.end = end;
    return entry;
  }

  /** Every figure is another number, so that two that change places are noticed. */
  private static void fill(SegmentFigures figures, double startSeconds, double lengthSeconds) {
    figures.startSeconds = startSeconds;
    figures.lengthSeconds = lengthSeconds;
    figures.meanAmps = 110.5;
    figures.meanVolts = 23.25;
    figures.rmsAmps = 111.5;
    figures.rmsVolts = 23.5;
    figures.energyJoules = 2_570 * lengthSeconds;
    figures.meanWatts = 2_570;
    figures.polarity = Polarity.DC_PLUS;
    figures.shortCircuits = 41;
    figures.arcOuts = 2;
    figures.greenSeconds = 0.5 * lengthSeconds;
    figures.amberSeconds = 0.2 * lengthSeconds;
    figures.redSeconds = 0.15 * lengthSeconds;
    figures.settlingSeconds = 0.1 * lengthSeconds;
    figures.faultSeconds = 0.05 * lengthSeconds;
    figures.missingSeconds = 0.01 * lengthSeconds;
  }

  /** The running segment was a touch. */
  public static LogEntry dropped(double startSeconds) {
    return entry(LogEntry.Kind.SEGMENT_DROPPED, startSeconds);
  }

  /** A touch of a trainee. */
  public static LogEntry touch(
      double startSeconds, double lengthSeconds, String trainee, boolean stuck) {
    LogEntry entry = entry(LogEntry.Kind.TOUCH, startSeconds);
    entry.lengthSeconds = lengthSeconds;
    entry.assignment = new Assignment(trainee, null);
    entry.stuck = stuck;
    return entry;
  }

  /** An event begins that will end. */
  public static LogEntry eventStarted(double startSeconds, EventKind kind) {
    LogEntry entry = entry(LogEntry.Kind.EVENT_STARTED, startSeconds);
    entry.event = kind;
    return entry;
  }

  /** An event ends, or stands alone. */
  public static LogEntry eventEnded(
      double startSeconds, double lengthSeconds, EventKind kind, long count) {
    LogEntry entry = entry(LogEntry.Kind.EVENT_ENDED, startSeconds);
    entry.event = kind;
    entry.lengthSeconds = lengthSeconds;
    entry.count = count;
    return entry;
  }
}
