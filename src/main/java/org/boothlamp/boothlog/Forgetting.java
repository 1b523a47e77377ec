package org.boothlamp.boothlog;

import java.nio.file.Path;
import java.sql.SQLException;
import java.util.LinkedHashMap;
import java.util.Map;
import org.boothlamp.monitor.EventKind;
import org.boothlamp.monitor.WallClock;

/**
 * Removes a trainee's rows on request. The request itself becomes a row, so that servers and
 * collected logs follow. Removal goes in small transactions: the monitor's writer never waits long.
 */
public final class Forgetting {

  private static final int ROWS_AT_ONCE = 200;

  private static final String REQUEST =
      "INSERT INTO forgotten (wall_ms, trainee, last_segment, last_touch, last_sign_in, last_event)"
          + " VALUES (?, ?,"
          + " (SELECT coalesce(max(id), 0) FROM segment WHERE end_word IS NOT NULL),"
          + " (SELECT coalesce(max(id), 0) FROM touch),"
          + " (SELECT coalesce(max(id), 0) FROM sign_in),"
          + " (SELECT coalesce(max(id), 0) FROM event))";

  /** Whose row it is, by table. A refused sign-in has the code in front of its reason. */
  private static final Map<String, String> OF_TRAINEE = ofTrainee();

  private Forgetting() {}

  private static Map<String, String> ofTrainee() {
    Map<String, String> conditions = new LinkedHashMap<>();
    conditions.put("segment", "t.trainee = f.trainee");
    conditions.put("touch", "t.trainee = f.trainee");
    conditions.put("sign_in", "t.trainee = f.trainee");
    conditions.put(
        "event",
        "t.word = '"
            + EventKind.SIGN_IN_REFUSED.word()
            + "' AND substr(t.detail, 1, length(f.trainee) + 1) = f.trainee || ':'");
    return conditions;
  }

  /**
   * Forgets a trainee: runs with their traces, touches, sign-ins. A run that is burning now stays.
   *
   * @return rows removed
   * @throws BoothLogException if the log cannot be opened or written
   */
  public static int forget(Path path, String trainee, WallClock clock) {
    try (LogConnection log = LogFile.openForWriting(path, LogFile.COMMAND_BUSY_MILLIS)) {
      log.execute("PRAGMA secure_delete = ON");
      log.bind(REQUEST).whole(clock.epochMillis()).text(trainee).run();
      int removed = 0;
      for (String table : OF_TRAINEE.keySet()) {
        removed += removeAll(log, table, "t.id <= f.last_" + table);
      }
      log.number("PRAGMA wal_checkpoint(TRUNCATE)");
      return removed;
    } catch (SQLException failure) {
      throw LogFile.explain(path, failure);
    }
  }

  /** The same in a collected log, for every request that has been collected. */
  static void followCollected(LogConnection log) throws SQLException {
    for (String table : OF_TRAINEE.keySet()) {
      removeAll(
          log,
          table,
          "EXISTS (SELECT 1 FROM collected_row ft JOIN collected_row tt"
              + " ON tt.booth = ft.booth AND tt.log = ft.log"
              + " WHERE ft.table_name = 'forgotten' AND ft.id = f.id"
              + " AND tt.table_name = '"
              + table
              + "' AND tt.id = t.id AND tt.original_id <= f.last_"
              + table
              + ")");
    }
  }

  private static int removeAll(LogConnection log, String table, String concerned)
      throws SQLException {
    String sql =
        "DELETE FROM "
            + table
            + " WHERE id IN (SELECT t.id FROM forgotten f JOIN "
            + table
            + " t ON "
            + OF_TRAINEE.get(table)
            + " AND "
            + concerned
            + (table.equals("segment") ? " AND t.end_word IS NOT NULL" : "")
            + " LIMIT "
            + ROWS_AT_ONCE
            + ")";
    int removed = 0;
    for (int some = 1; some > 0; removed += some) {
      some = log.bind(sql).runAndCount();
    }
    return removed;
  }
}
