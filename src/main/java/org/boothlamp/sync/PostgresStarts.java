package org.boothlamp.sync;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.boothlamp.report.StartTimes;
import org.boothlamp.report.StartTimes.Start;

/** The starts of monitors that a database holds. Stateless. */
final class PostgresStarts {

  /** A start by what it is known by. */
  record Found(String booth, String log, long number) {}

  private static final String STARTS =
      "SELECT b.from_booth, b.from_log, b.id, b.started_wall_ms, b.time_known,"
          + " greatest(b.started_wall_ms, (SELECT max(e.start_wall_ms)"
          + " FROM boothlamp.current_event e WHERE e.from_booth = b.from_booth"
          + " AND e.from_log = b.from_log AND e.boot = b.id))"
          + " FROM boothlamp.current_boot b WHERE ? OR b.from_booth = ?"
          + " ORDER BY b.from_booth, b.from_log, b.id";

  private static final String ANY_UNTIMED =
      "SELECT 1 FROM boothlamp.current_boot WHERE time_known = 0 LIMIT 1";

  private PostgresStarts() {}

  /** Starts whose clock was never set and that may have been in the span, in order. */
  static List<Found> untimedIn(
      Connection connection, String booth, long fromWallMillis, long untilWallMillis)
      throws SQLException {
    if (!hasUntimed(connection)) {
      return List.of();
    }
    Map<Start, Found> starts = new HashMap<>();
    List<Start> inOrder = new ArrayList<>();
    try (PreparedStatement statement = connection.prepareStatement(STARTS)) {
      statement.setBoolean(1, booth.isEmpty());
      statement.setString(2, booth);
      try (ResultSet row = statement.executeQuery()) {
        while (row.next()) {
          Found found = new Found(row.getString(1), row.getString(2), row.getLong(3));
          Start start =
              new Start(
                  found.booth() + " " + found.log(),
                  found.number(),
                  row.getLong(4),
                  row.getLong(5) != 0,
                  row.getLong(6));
          inOrder.add(start);
          starts.put(start, found);
        }
      }
    }
    return new StartTimes(inOrder)
        .untimedIn(fromWallMillis, untilWallMillis).stream().map(starts::get).toList();
  }

  private static boolean hasUntimed(Connection connection) throws SQLException {
    try (PreparedStatement statement = connection.prepareStatement(ANY_UNTIMED);
        ResultSet row = statement.executeQuery()) {
      return row.next();
    }
  }
}
