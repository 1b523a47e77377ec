package org.boothlamp.boothlog;

import java.sql.SQLException;
import org.boothlamp.monitor.BoothClock;

/**
 * This start of the monitor, as its rows refer to it. The writer deals the row numbers out itself,
 * so that it can try a transaction again without writing anything twice; and it deals them before
 * the file can be read, as first, second, third of this start. What they are in the file, and what
 * the time of day was, is asked when a row is written. Confined to one thread.
 */
final class LogStart {

  private static final long NANOS_PER_MILLI = 1_000_000L;

  private final BoothClock clock;
  private boolean settled;
  private boolean clockTrusted;
  private long boot;
  private long lastSegment;
  private long lastTouch;
  private long lastEvent;
  private long segments;
  private long touches;
  private long events;

  /**
   * A start of which nothing is known yet.
   *
   * @param clock the time of day that rows are labelled with; null if they bring their own, which
   *     is then trusted
   */
  LogStart(BoothClock clock) {
    this.clock = clock;
    clockTrusted = clock == null;
  }

  /** Takes the numbers that follow those in the log, also those whose rows are gone. */
  void settle(LogConnection log) throws SQLException {
    boot = last(log, "boot") + 1;
    lastSegment = last(log, "segment");
    lastTouch = last(log, "touch");
    lastEvent = last(log, "event");
    settled = true;
  }

  private static long last(LogConnection log, String table) throws SQLException {
    return log.number("SELECT seq FROM sqlite_sequence WHERE name = '" + table + "'");
  }

  /** False until the log could be read for the first time. */
  boolean isSettled() {
    return settled;
  }

  /** Number of this start of the monitor. */
  long boot() {
    return boot;
  }

  long nextSegment() {
    return ++segments;
  }

  long nextTouch() {
    return ++touches;
  }

  long nextEvent() {
    return ++events;
  }

  /** Row number of the n-th segment of this start. */
  long segment(long nth) {
    return lastSegment + nth;
  }

  /** Row number of the n-th touch of this start. */
  long touch(long nth) {
    return lastTouch + nth;
  }

  /** Row number of the n-th event of this start. */
  long event(long nth) {
    return lastEvent + nth;
  }

  /** Highest row numbers dealt out so far, for a file that takes the place of this one. */
  LogNumbers dealt() {
    return new LogNumbers(boot, segment(segments), touch(touches), event(events));
  }

  /** Time of day of a moment of this start, as far as it is known by now, ms since the epoch. */
  long wallMillis(long stampedWallMillis, long monotonicNanos) {
    return clock == null ? stampedWallMillis : baseMillis() + monotonicNanos / NANOS_PER_MILLI;
  }

  /** Time of day at which the monotonic clock stood at 0; not to be asked without a clock. */
  long baseMillis() {
    return clock.baseMillis();
  }

  /** True if the time of day of this start's rows is known. */
  boolean isClockTrusted() {
    return clockTrusted;
  }

  void trustClock() {
    clockTrusted = true;
  }
}
