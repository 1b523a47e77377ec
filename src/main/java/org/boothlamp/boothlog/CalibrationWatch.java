package org.boothlamp.boothlog;

import java.sql.SQLException;
import java.util.function.Consumer;
import org.boothlamp.calibration.CalibrationHistory;
import org.tinylog.Logger;

/**
 * Notices calibrations and withdrawals that other processes wrote. Confined to one thread.
 *
 * <p>Tells of all calibrations at its first look, at every change, and once a minute, because a due
 * date passes without anybody writing anything.
 */
final class CalibrationWatch {

  private static final long POLL_NANOS = 250_000_000L;
  private static final long MINUTE_NANOS = 60_000_000_000L;

  /** Nothing is ever changed or deleted there: a new row is all that can happen. */
  private static final String ROWS =
      "SELECT (SELECT count(*) FROM calibration_finish)"
          + " + (SELECT count(*) FROM calibration_withdrawal)";

  private final LogClocks clocks;
  private final Consumer<CalibrationHistory> onCalibrations;
  private CalibrationHistory history;
  private long knownRows = -1;
  private long nextPollNanos;
  private long nextTellNanos;
  private long failures;

  CalibrationWatch(LogClocks clocks, Consumer<CalibrationHistory> onCalibrations) {
    this.clocks = clocks;
    this.onCalibrations = onCalibrations;
    nextPollNanos = clocks.nano().nanoTime();
    nextTellNanos = nextPollNanos;
  }

  /** Looks for new rows, four times a second at most. */
  void poll(BoothLog log) {
    long now = clocks.nano().nanoTime();
    if (now - nextPollNanos < 0) {
      return;
    }
    nextPollNanos = now + POLL_NANOS;
    try {
      boolean changed = look(log.connection());
      if (changed || now - nextTellNanos >= 0) {
        nextTellNanos = now + MINUTE_NANOS;
        onCalibrations.accept(history);
      }
      failures = 0;
    } catch (SQLException | RuntimeException failure) {
      onFailure(log, failure);
    }
  }

  private boolean look(LogConnection log) throws SQLException {
    long rows = rows(log);
    if (rows == knownRows) {
      return false;
    }
    history = CalibrationReading.history(log);
    knownRows = rows;
    return true;
  }

  private static long rows(LogConnection log) throws SQLException {
    try (Columns row = log.bind(ROWS).rows()) {
      row.next();
      return row.whole();
    }
  }

  private void onFailure(BoothLog log, Exception failure) {
    if (failures++ == 0) {
      Logger.warn(
          failure, "booth log {}: calibrations cannot be followed, trying again", log.path());
    }
    if (failure instanceof SQLException known && !SqliteCodes.passesByItself(known)) {
      log.dropConnection(failure);
    }
  }
}
