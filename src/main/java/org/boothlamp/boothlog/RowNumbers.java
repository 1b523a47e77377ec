package org.boothlamp.boothlog;

import java.sql.SQLException;

/**
 * The next row numbers. The writer deals them out itself, so that it can try a transaction again
 * without writing anything twice. Confined to one thread.
 */
final class RowNumbers {

  private final long boot;
  private long segment;
  private long touch;
  private long event;

  private RowNumbers(long boot, long segment, long touch, long event) {
    this.boot = boot;
    this.segment = segment;
    this.touch = touch;
    this.event = event;
  }

  /** The numbers that follow those in the log, also those whose rows are gone. */
  static RowNumbers after(LogConnection log) throws SQLException {
    return new RowNumbers(
        last(log, "boot") + 1, last(log, "segment"), last(log, "touch"), last(log, "event"));
  }

  private static long last(LogConnection log, String table) throws SQLException {
    return log.number("SELECT seq FROM sqlite_sequence WHERE name = '" + table + "'");
  }

  /** Number of this start of the monitor. */
  long boot() {
    return boot;
  }

  long nextSegment() {
    return ++segment;
  }

  long nextTouch() {
    return ++touch;
  }

  long nextEvent() {
    return ++event;
  }
}
