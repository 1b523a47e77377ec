package org.boothlamp;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.Comparator;
import java.util.List;

/** Holds the lamp's trace against the log: each run was shown as it began. */
final class LampPunctuality {

  /** From the first slot with current to the lamp: 0.05 s to be sure, and a busy machine. */
  private static final double LAMP_SECONDS = 0.3;

  private LampPunctuality() {}

  /** Answers how many runs began between two moments; fails if one was shown late, or not. */
  static int assertInTime(Path log, Path trace, long fromNanos, long untilNanos)
      throws SQLException {
    int during = 0;
    List<LampTrace.Row> rows = LampTrace.read(trace).rows();
    try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + log);
        Statement statement = connection.createStatement();
        ResultSet starts =
            statement.executeQuery("SELECT id, start_mono_ns FROM segment ORDER BY id")) {
      while (starts.next()) {
        long start = starts.getLong(2);
        long run = starts.getLong(1);
        assertEquals(1, shownAt(start, rows), () -> "run " + run + ": " + nearest(start, rows));
        during += start >= fromNanos && start < untilNanos ? 1 : 0;
      }
    }
    return during;
  }

  /** How far off the nearest was, for whoever has to tell a busy machine from a lamp that waits. */
  private static String nearest(long startNanos, List<LampTrace.Row> rows) {
    return rows.stream()
        .filter(row -> row.signal().equals("settling"))
        .map(row -> (row.monotonicNanos() - startNanos) / 1e9)
        .min(Comparator.comparingDouble(Math::abs))
        .map(seconds -> "shown after " + seconds + " s")
        .orElse("never shown");
  }

  private static long shownAt(long startNanos, List<LampTrace.Row> rows) {
    return rows.stream()
        .filter(row -> row.signal().equals("settling"))
        .filter(row -> Math.abs(row.monotonicNanos() - startNanos) < LAMP_SECONDS * 1e9)
        .count();
  }
}
