package org.boothlamp.monitor;

import org.boothlamp.calibration.CalibrationNumbers;
import org.boothlamp.judging.Side;
import org.boothlamp.procedure.Quantity;
import org.boothlamp.signal.PairScale;
import org.boothlamp.signal.PairSums;

/**
 * One thing for the booth log. A flat, reusable record, so that the sampler's path creates nothing:
 * only the fields named at the {@link Kind} are valid. Confined to one thread at a time.
 *
 * <p>Order: a segment sends {@code SEGMENT_STARTED}, then any number of {@code TRACE_POINT}, {@code
 * EXCURSION} and {@code SEGMENT_PROGRESS}, then {@code SEGMENT_ENDED}, or {@code SEGMENT_DROPPED}
 * if it turned out to be no more than a touch; {@code TOUCH} and {@code EVENT_…} may come between.
 */
public final class LogEntry {

  /** Trace points in a second. */
  public static final int TRACE_HZ = 20;

  /** What an entry is, and which fields it uses besides the times. */
  public enum Kind {
    /** {@code assignment, scale, calibrations, zeroSeen, currentOffsetCounts, pairsPerSecond}. */
    SEGMENT_STARTED,
    /**
     * The seven {@code …Count} and {@code signalCode} fields: the next 0.05 s of the running
     * segment.
     */
    TRACE_POINT,
    /** {@code quantity, side, startSeconds, lengthSeconds, worst}; an excursion that is over. */
    EXCURSION,
    /** {@code figures} of the running segment so far, ten times a second. */
    SEGMENT_PROGRESS,
    /** {@code figures}, {@code end}. */
    SEGMENT_ENDED,
    /** The running segment is to be forgotten. */
    SEGMENT_DROPPED,
    /** {@code assignment, startSeconds, lengthSeconds, stuck}. */
    TOUCH,
    /** {@code event}, {@code startSeconds}: something begins that will end. */
    EVENT_STARTED,
    /**
     * {@code event}, {@code startSeconds, lengthSeconds, count}: ends the open event of that kind,
     * or stands alone.
     */
    EVENT_ENDED
  }

  /** What this entry is. */
  public Kind kind = Kind.EVENT_ENDED;

  /** Monotonic time of the start of what is told, ns; on the source's clock. */
  public long monotonicNanos;

  /** Time of day of the same moment, ms since the epoch. */
  public long wallMillis;

  /** Start, seconds since the source's first pair. */
  public double startSeconds;

  /** How long it lasted, s. */
  public double lengthSeconds;

  /** Who welds, against what. */
  public Assignment assignment = Assignment.NONE;

  /** Scale of both channels. */
  public PairScale scale;

  /** What the scale rests on. */
  public CalibrationNumbers calibrations = CalibrationNumbers.NONE;

  /** True if the clamp's zero was seen, and {@link #currentOffsetCounts} puts it at the scale's. */
  public boolean zeroSeen;

  /** Rate of the source. */
  public int pairsPerSecond;

  /** Counts that are taken off every current count, because the clamp's zero has moved. */
  public int currentOffsetCounts;

  /** Figures of the segment. */
  public final SegmentFigures figures = new SegmentFigures();

  /** Why the segment ended. */
  public SegmentEnd end = SegmentEnd.ARC_OFF;

  /** Mean current count over the trace point; NaN if nothing arrived. */
  public float meanCurrentCount;

  /** Lowest current count. */
  public short lowestCurrentCount;

  /** Highest current count. */
  public short highestCurrentCount;

  /** Mean voltage count; NaN if nothing arrived. */
  public float meanVoltageCount;

  /** Lowest voltage count. */
  public short lowestVoltageCount;

  /** Highest voltage count. */
  public short highestVoltageCount;

  /** Code of the signal shown at the end of the trace point. */
  public byte signalCode;

  /** Which average left its window. */
  public Quantity quantity = Quantity.AMPS;

  /** On which side. */
  public Side side = Side.LOW;

  /** The average farthest out, in the quantity's unit. */
  public double worst;

  /** True for a contact of more than 0.5 s at short-circuit volts. */
  public boolean stuck;

  /** Kind of event. */
  public EventKind event = EventKind.STARTED;

  /** How many, where the event counts something: pairs, frames, entries. */
  public long count;

  /** Takes the six {@code …Count} fields from sums; no pairs give NaN and 0. */
  void setCounts(PairSums point) {
    boolean missing = point.pairs() == 0;
    meanCurrentCount = (float) point.meanCurrentCount();
    lowestCurrentCount = missing ? 0 : (short) point.lowestCurrentCount();
    highestCurrentCount = missing ? 0 : (short) point.highestCurrentCount();
    meanVoltageCount = (float) point.meanVoltageCount();
    lowestVoltageCount = missing ? 0 : (short) point.lowestVoltageCount();
    highestVoltageCount = missing ? 0 : (short) point.highestVoltageCount();
  }

  /** Becomes a copy of {@code other}. */
  public void set(LogEntry other) {
    kind = other.kind;
    monotonicNanos = other.monotonicNanos;
    wallMillis = other.wallMillis;
    startSeconds = other.startSeconds;
    lengthSeconds = other.lengthSeconds;
    assignment = other.assignment;
    scale = other.scale;
    calibrations = other.calibrations;
    zeroSeen = other.zeroSeen;
    currentOffsetCounts = other.currentOffsetCounts;
    pairsPerSecond = other.pairsPerSecond;
    figures.set(other.figures);
    end = other.end;
    meanCurrentCount = other.meanCurrentCount;
    lowestCurrentCount = other.lowestCurrentCount;
    highestCurrentCount = other.highestCurrentCount;
    meanVoltageCount = other.meanVoltageCount;
    lowestVoltageCount = other.lowestVoltageCount;
    highestVoltageCount = other.highestVoltageCount;
    signalCode = other.signalCode;
    quantity = other.quantity;
    side = other.side;
    worst = other.worst;
    stuck = other.stuck;
    event = other.event;
    count = other.count;
  }
}
