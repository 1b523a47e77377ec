package org.boothlamp.boothlog;

import java.nio.file.Path;
import java.sql.SQLException;
import java.util.List;
import org.boothlamp.calibration.CalibrationBook;
import org.boothlamp.calibration.CalibrationCheck;
import org.boothlamp.calibration.CalibrationFinish;
import org.boothlamp.calibration.CalibrationHead;
import org.boothlamp.calibration.CalibrationHistory;
import org.boothlamp.calibration.CalibrationPoint;
import org.boothlamp.calibration.Channel;
import org.boothlamp.calibration.Withdrawal;

/**
 * Calibrations in the booth log, beside a monitor that runs or alone. Each call is a transaction of
 * its own that waits up to 5 s for other writers and is on the disk when it returns; a running
 * monitor notices within a second. Confined to one thread.
 */
public final class BoothCalibrations implements CalibrationBook {

  private static final String COUNT_POINTS =
      "SELECT count(*) FROM calibration_point WHERE calibration_id = ?";
  private static final String FIND_POINT =
      "SELECT d.reason FROM calibration_point p LEFT JOIN calibration_discard d"
          + " ON d.calibration_id = p.calibration_id AND d.number = p.number"
          + " WHERE p.calibration_id = ? AND p.number = ?";
  private static final String STATE =
      "SELECT f.ending, w.calibration_id FROM calibration c"
          + " LEFT JOIN calibration_finish f ON f.calibration_id = c.id"
          + " LEFT JOIN calibration_withdrawal w ON w.calibration_id = c.id WHERE c.id = ?";

  @FunctionalInterface
  private interface Work<T> {
    T in(LogConnection log) throws SQLException;
  }

  private final Path path;
  private final LogConnection log;

  private BoothCalibrations(Path path, LogConnection log) {
    this.path = path;
    this.log = log;
  }

  /**
   * Opens the calibrations of a log; makes the log if there is none.
   *
   * @throws BoothLogException if the log cannot be opened or written
   */
  public static BoothCalibrations open(Path path) {
    return new BoothCalibrations(path, LogFile.openForWriting(path, LogFile.COMMAND_BUSY_MILLIS));
  }

  @Override
  public long begin(CalibrationHead head) {
    return write(to -> CalibrationRows.insert(to, head));
  }

  @Override
  public void addPoint(long number, CalibrationPoint point) {
    write(
        to -> {
          requireUnderWay(to, number);
          CalibrationRows.insert(to, number, countPoints(to, number), point);
          return null;
        });
  }

  private static long countPoints(LogConnection from, long number) throws SQLException {
    try (Columns row = from.bind(COUNT_POINTS).whole(number).rows()) {
      row.next();
      return row.whole();
    }
  }

  @Override
  public void discard(long number, int index, String reason) {
    if (reason == null || reason.isBlank()) {
      throw new IllegalArgumentException("a point is thrown away with a reason: reason is blank");
    }
    write(
        to -> {
          requireUnderWay(to, number);
          requireKeptPoint(to, number, index);
          CalibrationRows.insertDiscard(to, number, index, reason);
          return null;
        });
  }

  private static void requireKeptPoint(LogConnection from, long number, int index)
      throws SQLException {
    try (Columns row = from.bind(FIND_POINT).whole(number).whole(index).rows()) {
      if (!row.next()) {
        throw new IllegalArgumentException("calibration " + number + " has no point " + index);
      }
      if (row.text() != null) {
        throw new IllegalArgumentException(
            "point " + index + " of calibration " + number + " was thrown away before");
      }
    }
  }

  @Override
  public void finish(long number, CalibrationFinish finish) {
    write(
        to -> {
          requireUnderWay(to, number);
          CalibrationRows.insert(to, number, finish);
          return null;
        });
  }

  @Override
  public void withdraw(long number, Withdrawal withdrawal) {
    write(
        to -> {
          requireInForce(to, number);
          CalibrationRows.insert(to, number, withdrawal);
          return null;
        });
  }

  private static void requireUnderWay(LogConnection from, long number) throws SQLException {
    try (Columns row = from.bind(STATE).whole(number).rows()) {
      if (!row.next()) {
        throw new IllegalArgumentException("there is no calibration " + number);
      }
      String ending = row.text();
      if (ending != null) {
        throw new IllegalStateException(
            "calibration " + number + " has ended before: " + ending + "; begin another one");
      }
    }
  }

  private static void requireInForce(LogConnection from, long number) throws SQLException {
    try (Columns row = from.bind(STATE).whole(number).rows()) {
      if (!row.next()) {
        throw new IllegalStateException("there is no calibration " + number);
      }
      if (!CalibrationFinish.Ending.ACCEPTED.word().equals(row.text())) {
        throw new IllegalStateException(
            "only an accepted calibration is withdrawn, calibration " + number + " is not");
      }
      if (row.text() != null) {
        throw new IllegalStateException("calibration " + number + " was withdrawn before");
      }
    }
  }

  @Override
  public void addCheck(CalibrationCheck check) {
    write(
        to -> {
          CalibrationRows.insert(to, check);
          return null;
        });
  }

  @Override
  public CalibrationHistory history() {
    return transaction("BEGIN", from -> CalibrationReading.history(from));
  }

  @Override
  public List<CalibrationCheck> checks(Channel channel) {
    return transaction("BEGIN", from -> CalibrationReading.checks(from, channel));
  }

  private <T> T write(Work<T> work) {
    return transaction("BEGIN IMMEDIATE", work);
  }

  private <T> T transaction(String begin, Work<T> work) {
    try {
      log.execute(begin);
      try {
        T answer = work.in(log);
        log.execute("COMMIT");
        return answer;
      } catch (SQLException | RuntimeException failure) {
        undo(failure);
        throw failure;
      }
    } catch (SQLException failure) {
      throw LogFile.explain(path, failure);
    }
  }

  private void undo(Exception failure) {
    try {
      log.execute("ROLLBACK");
    } catch (SQLException alsoFailed) {
      failure.addSuppressed(alsoFailed);
    }
  }

  @Override
  public void close() {
    try {
      log.close();
    } catch (SQLException failure) {
      throw LogFile.explain(path, failure);
    }
  }
}
