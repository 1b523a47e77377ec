package org.boothlamp.sync;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import org.boothlamp.report.EarlierRun;
import org.boothlamp.report.SignInMoment;

/**
 * Reads from a database what a shift is compared with. Needs the right to read the views, no other.
 * Confined to one thread.
 */
public final class PostgresGlance implements AutoCloseable {

  private static final String SIGN_INS =
      "SELECT s.from_booth, s.wall_ms, s.trainee FROM boothlamp.current_sign_in s"
          + " WHERE s.wall_ms >= ? AND s.wall_ms < ? AND (? OR s.from_booth = ?)"
          + " ORDER BY s.wall_ms, s.from_booth, s.from_log, s.id";

  private static final String EARLIER =
      "SELECT s.trainee, s.procedure_id, s.procedure_revision, s.pass, s.start_wall_ms,"
          + " s.green_s + s.amber_s, s.green_s + s.amber_s + s.red_s"
          + " FROM boothlamp.current_segment s"
          + " WHERE s.start_wall_ms >= ? AND s.start_wall_ms < ? AND (? OR s.from_booth = ?)"
          + " AND s.time_known = 1 AND s.green_s + s.amber_s + s.red_s > 0"
          + " ORDER BY s.start_wall_ms, s.from_booth, s.from_log, s.id";

  @FunctionalInterface
  private interface Reading<T> {
    T of(ResultSet row) throws SQLException;
  }

  private final PostgresTarget target;
  private final String booth;
  private final Connection connection;

  private PostgresGlance(PostgresTarget target, String booth, Connection connection) {
    this.target = target;
    this.booth = booth;
    this.connection = connection;
  }

  /**
   * Opens a database.
   *
   * @param booth only this booth; empty for all
   */
  public static PostgresGlance open(PostgresTarget target, String booth) throws SyncException {
    try {
      Connection connection = PostgresConnections.open(target);
      connection.setReadOnly(true);
      return new PostgresGlance(target, booth, connection);
    } catch (SQLException failure) {
      throw PostgresErrors.explain(failure, target);
    }
  }

  /**
   * Who signed in, or out, in a span of time.
   *
   * @param fromWallMillis time of day, ms since the epoch, inside
   * @param untilWallMillis likewise, outside
   */
  public List<SignInMoment> signIns(long fromWallMillis, long untilWallMillis)
      throws SyncException {
    return list(
        SIGN_INS,
        fromWallMillis,
        untilWallMillis,
        row -> new SignInMoment(row.getString(1), row.getLong(2), row.getString(3)));
  }

  /** What a comparison needs of the judged runs that began in a span of time. */
  public List<EarlierRun> earlierRuns(long fromWallMillis, long untilWallMillis)
      throws SyncException {
    return list(EARLIER, fromWallMillis, untilWallMillis, PostgresGlance::earlierRun);
  }

  private static EarlierRun earlierRun(ResultSet row) throws SQLException {
    return new EarlierRun(
        row.getString(1),
        row.getString(2),
        row.getString(3),
        row.getString(4),
        row.getLong(5),
        row.getDouble(6),
        row.getDouble(7));
  }

  private <T> List<T> list(
      String sql, long fromWallMillis, long untilWallMillis, Reading<T> reading)
      throws SyncException {
    List<T> list = new ArrayList<>();
    try (PreparedStatement statement = connection.prepareStatement(sql)) {
      statement.setLong(1, fromWallMillis);
      statement.setLong(2, untilWallMillis);
      statement.setBoolean(3, booth.isEmpty());
      statement.setString(4, booth);
      try (ResultSet rows = statement.executeQuery()) {
        while (rows.next()) {
          list.add(reading.of(rows));
        }
      }
    } catch (SQLException failure) {
      throw PostgresErrors.explain(failure, target);
    }
    return list;
  }

  @Override
  public void close() throws SyncException {
    try {
      connection.close();
    } catch (SQLException failure) {
      throw PostgresErrors.explain(failure, target);
    }
  }
}
