package org.boothlamp.sync;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.boothlamp.boothlog.SentCalibrations;
import org.boothlamp.calibration.BoothHistories;
import org.boothlamp.calibration.BoothHistories.OneLog;
import org.boothlamp.calibration.CalibrationHistory;
import org.boothlamp.calibration.CalibrationRecord;

/**
 * The calibrations in a database, each with a number that no other one has: its own where that is
 * free, else the next, as in a collected log. Confined to one thread.
 */
final class PostgresCalibrations {

  /**
   * The latest start of a log comes last; one that was calibrated and never started comes first.
   */
  private static final String LOGS =
      "SELECT from_log, booth, started_wall_ms, 1 AS kind, id FROM boothlamp.current_boot"
          + " WHERE ? OR from_booth = ?"
          + " UNION ALL SELECT from_log, booth, started_wall_ms, 0, id"
          + " FROM boothlamp.current_calibration WHERE ? OR from_booth = ?"
          + " ORDER BY 1, 4, 5";

  private record Original(String log, long number) {}

  private final Map<Original, Long> numbers = new HashMap<>();
  private final Set<Long> taken = new HashSet<>();
  private final BoothHistories histories;

  private PostgresCalibrations(Connection connection, String booth) throws SQLException {
    List<OneLog> logs = new ArrayList<>();
    for (Map.Entry<String, OneLog> log : logs(connection, booth).entrySet()) {
      OneLog found = log.getValue();
      CalibrationHistory history =
          SentCalibrations.read(connection, "boothlamp.current_", log.getKey());
      logs.add(
          new OneLog(found.booth(), found.startedWallMillis(), numbered(log.getKey(), history)));
    }
    histories = BoothHistories.of(logs);
  }

  /**
   * All of them.
   *
   * @param booth only this booth; empty for all
   */
  static PostgresCalibrations read(Connection connection, String booth) throws SQLException {
    return new PostgresCalibrations(connection, booth);
  }

  private static Map<String, OneLog> logs(Connection connection, String booth) throws SQLException {
    Map<String, OneLog> logs = new LinkedHashMap<>();
    try (PreparedStatement statement = connection.prepareStatement(LOGS)) {
      statement.setBoolean(1, booth.isEmpty());
      statement.setString(2, booth);
      statement.setBoolean(3, booth.isEmpty());
      statement.setString(4, booth);
      try (ResultSet row = statement.executeQuery()) {
        while (row.next()) {
          logs.put(
              row.getString(1),
              new OneLog(row.getString(2), row.getLong(3), CalibrationHistory.NONE));
        }
      }
    }
    return logs;
  }

  private CalibrationHistory numbered(String log, CalibrationHistory history) {
    List<CalibrationRecord> records = new ArrayList<>();
    for (CalibrationRecord record : history.records()) {
      long number = free(record.number());
      numbers.put(new Original(log, record.number()), number);
      records.add(
          new CalibrationRecord(
              number, record.head(), record.points(), record.finish(), record.withdrawal()));
    }
    return new CalibrationHistory(records);
  }

  private long free(long number) {
    long free = number;
    while (!taken.add(free)) {
      free = taken.stream().mapToLong(Long::longValue).max().orElse(0) + 1;
    }
    return free;
  }

  /** The number here of a calibration that a row names; as it is if nothing is known of it. */
  long number(String log, long original) {
    return numbers.getOrDefault(new Original(log, original), original);
  }

  BoothHistories histories() {
    return histories;
  }
}
