package org.boothlamp.boothlog;

import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import org.boothlamp.report.EarlierRun;
import org.boothlamp.report.SignInMoment;

/** Reads what a shift is compared with, without the rows that a comparison does not need. */
final class GlanceReading {

  private static final String SIGN_INS =
      "SELECT '', s.wall_ms, s.trainee FROM sign_in s"
          + " WHERE s.wall_ms >= ? AND s.wall_ms < ? ORDER BY s.wall_ms, s.id";

  /** In a collected log the booth is known only beside the row. */
  private static final String COLLECTED_SIGN_INS =
      "SELECT ifnull(c.booth, ''), s.wall_ms, s.trainee FROM sign_in s"
          + " LEFT JOIN collected_row c ON c.table_name = 'sign_in' AND c.id = s.id"
          + " WHERE s.wall_ms >= ? AND s.wall_ms < ? ORDER BY s.wall_ms, s.id";

  private static final String EARLIER =
      "SELECT trainee, procedure_id, procedure_revision, pass, start_wall_ms, green_s + amber_s,"
          + " green_s + amber_s + red_s FROM segment"
          + " WHERE start_wall_ms >= ? AND start_wall_ms < ? AND green_s + amber_s + red_s > 0"
          // When runs of the other starts were, nobody knows.
          + " AND boot NOT IN (SELECT id FROM boot WHERE clock_trusted = 0)"
          + " ORDER BY start_wall_ms, id";

  private GlanceReading() {}

  static List<SignInMoment> signIns(
      LogConnection log, boolean collected, long fromWallMillis, long untilWallMillis)
      throws SQLException {
    List<SignInMoment> signIns = new ArrayList<>();
    String sql = collected ? COLLECTED_SIGN_INS : SIGN_INS;
    try (Columns row = log.bind(sql).whole(fromWallMillis).whole(untilWallMillis).rows()) {
      while (row.next()) {
        signIns.add(new SignInMoment(row.text(), row.whole(), row.text()));
      }
    }
    return signIns;
  }

  static List<EarlierRun> earlierRuns(LogConnection log, long fromWallMillis, long untilWallMillis)
      throws SQLException {
    List<EarlierRun> runs = new ArrayList<>();
    try (Columns row = log.bind(EARLIER).whole(fromWallMillis).whole(untilWallMillis).rows()) {
      while (row.next()) {
        runs.add(
            new EarlierRun(
                row.text(),
                row.text(),
                row.text(),
                row.text(),
                row.whole(),
                row.real(),
                row.real()));
      }
    }
    return runs;
  }
}
