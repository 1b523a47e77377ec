package org.boothlamp.boothlog;

import java.io.IOException;
import java.sql.SQLException;
import java.time.LocalDate;
import org.boothlamp.monitor.EventKind;
import org.tinylog.Logger;

/**
 * Deletes rows that are older than they may become: once a day, a minute after the start or when
 * the day changes, while nothing waits to be written, no arc burns, and the time of day is known.
 * An event says what went. Confined to one thread.
 */
final class Retention {

  /** What the start brings along comes first, ns. */
  private static final long FIRST_NANOS = 60_000_000_000L;

  private static final long POLL_NANOS = 10_000_000_000L;

  /** Pause after something else held the log, ns. */
  private static final long BUSY_NANOS = 1_000_000_000L;

  private static final long FAILED_NANOS = 3_600_000_000_000L;

  private final RetentionRule rule;
  private final SentRows sent;
  private final LogClocks clocks;
  private final LogStart start;
  private final EntrySorter sorter;
  private LocalDate done;
  private RetentionPass pass;
  private long dueNanos;

  Retention(
      RetentionRule rule, SentRows sent, LogClocks clocks, LogStart start, EntrySorter sorter) {
    this.rule = rule;
    this.sent = sent;
    this.clocks = clocks;
    this.start = start;
    this.sorter = sorter;
    dueNanos = clocks.nano().nanoTime() + FIRST_NANOS;
  }

  /** Deletes some rows if it is time. To be called only while nothing waits to be written. */
  void poll(BoothLog log) {
    if (rule.equals(RetentionRule.FOR_EVER)
        || clocks.nano().nanoTime() - dueNanos < 0
        || sorter.isSegmentRunning()
        || !start.isClockTrusted()) {
      return;
    }
    try {
      look(log);
    } catch (SQLException failure) {
      onFailure(log, failure);
    } catch (IOException | RuntimeException failure) {
      giveUp(log, failure);
    }
  }

  private void look(BoothLog log) throws SQLException, IOException {
    LocalDate today = clocks.localNow().toLocalDate();
    if (pass == null && today.equals(done)) {
      pause(POLL_NANOS);
      return;
    }
    if (pass == null) {
      done = today;
      pass = new RetentionPass(rule, sent, today, clocks.zone());
    }
    if (!pass.step(log.connection())) {
      tell();
      pass = null;
    }
  }

  private void tell() {
    if (pass.deleted() + pass.kept() > 0) {
      Logger.info("old rows deleted: {}", pass.words());
      sorter.addEvent(EventKind.OLD_ROWS_DELETED, clocks.now(), 0, pass.deleted(), pass.words());
    }
  }

  private void onFailure(BoothLog log, SQLException failure) {
    if (SqliteCodes.passesByItself(failure)) {
      pause(BUSY_NANOS);
    } else {
      log.dropConnection(failure);
      giveUp(log, failure);
    }
  }

  /** What was deleted by then is gone, and is said; the rest is tried again later. */
  private void giveUp(BoothLog log, Exception failure) {
    Logger.warn("booth log {}: old rows stay for now: {}", log.path(), failure.getMessage());
    if (pass != null) {
      tell();
    }
    pass = null;
    done = null;
    pause(FAILED_NANOS);
  }

  private void pause(long nanos) {
    dueNanos = clocks.nano().nanoTime() + nanos;
  }
}
