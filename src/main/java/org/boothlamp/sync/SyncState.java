package org.boothlamp.sync;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;
import org.sqlite.SQLiteConfig;

/**
 * How far rows have been sent, in a small database beside the log: its own file, so that nothing in
 * here ever waits for the log's writer or keeps it waiting. Losing it costs nothing but sending
 * every row again. Everything is kept apart by target and by log. Confined to one thread at a time.
 */
public final class SyncState implements AutoCloseable {

  /** Usual name of the file. */
  public static final String FILE_NAME = "sync.db";

  private static final int BUSY_MILLIS = 5_000;

  private static final String LAYOUT =
      """
      CREATE TABLE IF NOT EXISTS mark (
        target TEXT NOT NULL, log TEXT NOT NULL, table_name TEXT NOT NULL, id INTEGER NOT NULL,
        PRIMARY KEY (target, log, table_name)) STRICT, WITHOUT ROWID;
      CREATE TABLE IF NOT EXISTS passed_over (
        target TEXT NOT NULL, log TEXT NOT NULL, table_name TEXT NOT NULL, id INTEGER NOT NULL,
        PRIMARY KEY (target, log, table_name, id)) STRICT, WITHOUT ROWID;
      CREATE TABLE IF NOT EXISTS sent (
        target TEXT NOT NULL, log TEXT NOT NULL, table_name TEXT NOT NULL, id INTEGER NOT NULL,
        PRIMARY KEY (target, log, table_name, id)) STRICT, WITHOUT ROWID;
      CREATE TABLE IF NOT EXISTS set_aside (
        target TEXT NOT NULL, log TEXT NOT NULL, table_name TEXT NOT NULL, id INTEGER NOT NULL,
        reason TEXT NOT NULL, wall_ms INTEGER NOT NULL,
        PRIMARY KEY (target, log, table_name, id)) STRICT, WITHOUT ROWID;
      CREATE TABLE IF NOT EXISTS outcome (
        target TEXT PRIMARY KEY, success_wall_ms INTEGER, failure_wall_ms INTEGER,
        failure TEXT NOT NULL, next_move TEXT NOT NULL) STRICT, WITHOUT ROWID;
      """;

  private final Path path;
  private final Connection connection;
  private final String target;
  private final String log;

  private SyncState(Path path, Connection connection, String target, String log) {
    this.path = path;
    this.connection = connection;
    this.target = target;
    this.log = log;
  }

  /**
   * Opens the state beside a booth log; makes the file if it is missing.
   *
   * @param boothLog the log's file
   * @param target where rows are sent
   * @param log identity of the log
   */
  public static SyncState open(Path boothLog, SyncTarget target, String log) throws SyncException {
    Path path = boothLog.resolveSibling(FILE_NAME);
    SQLiteConfig config = new SQLiteConfig();
    config.setBusyTimeout(BUSY_MILLIS);
    config.setJournalMode(SQLiteConfig.JournalMode.WAL);
    config.setSynchronous(SQLiteConfig.SynchronousMode.NORMAL);
    String uri = path.toAbsolutePath().toUri().getRawPath();
    try {
      Connection connection = config.createConnection("jdbc:sqlite:file:" + uri);
      try (Statement statement = connection.createStatement()) {
        statement.executeUpdate(LAYOUT);
      }
      return new SyncState(path, connection, target.name(), log);
    } catch (SQLException failure) {
      throw unusable(path, failure);
    }
  }

  private static SyncException unusable(Path path, SQLException failure) {
    return SyncException.setUp(
        "the sync state " + path + " cannot be used (" + failure.getMessage() + ")",
        "check the disk; if it is damaged, delete it: every row is then sent again, and the target"
            + " keeps each once",
        failure);
  }

  @FunctionalInterface
  private interface Use<T> {
    T of(PreparedStatement statement) throws SQLException;
  }

  private <T> T use(String sql, Use<T> use, Object... values) throws SyncException {
    try (PreparedStatement statement = connection.prepareStatement(sql)) {
      for (int i = 0; i < values.length; i++) {
        statement.setObject(i + 1, values[i]);
      }
      return use.of(statement);
    } catch (SQLException failure) {
      throw unusable(path, failure);
    }
  }

  private void change(String sql, Object... values) throws SyncException {
    use(sql, PreparedStatement::executeUpdate, values);
  }

  private List<Long> numbers(String sql, Object... values) throws SyncException {
    return use(sql, SyncState::numbersOf, values);
  }

  private static List<Long> numbersOf(PreparedStatement statement) throws SQLException {
    List<Long> numbers = new ArrayList<>();
    try (ResultSet rows = statement.executeQuery()) {
      while (rows.next()) {
        numbers.add(rows.getLong(1));
      }
    }
    return numbers;
  }

  /** Number of the last row of a table that was looked at; 0 before the first. */
  long mark(String table) throws SyncException {
    List<Long> marks =
        numbers(
            "SELECT id FROM mark WHERE target = ? AND log = ? AND table_name = ?",
            target,
            log,
            table);
    return marks.isEmpty() ? 0 : marks.get(0);
  }

  /** Everything up to a row is sent, passed over or set aside; never moves back. */
  void moveMark(String table, long id) throws SyncException {
    change(
        "INSERT INTO mark VALUES (?, ?, ?, ?) ON CONFLICT DO UPDATE SET id = max(id, excluded.id)",
        target,
        log,
        table,
        id);
  }

  /**
   * Rows that are sent or set aside, of a table whose rows come in any order: no mark holds there.
   */
  List<Long> sent(String table) throws SyncException {
    return numbers(
        "SELECT id FROM sent WHERE target = ? AND log = ? AND table_name = ? ORDER BY id",
        target,
        log,
        table);
  }

  void noteSent(String table, long id) throws SyncException {
    change("INSERT INTO sent VALUES (?, ?, ?, ?) ON CONFLICT DO NOTHING", target, log, table, id);
  }

  /** A row behind the mark that is not sent yet: it may still change, or is to be tried again. */
  void passOver(String table, long id) throws SyncException {
    change(
        "INSERT INTO passed_over VALUES (?, ?, ?, ?) ON CONFLICT DO NOTHING",
        target,
        log,
        table,
        id);
  }

  List<Long> passedOver(String table) throws SyncException {
    return numbers(
        "SELECT id FROM passed_over WHERE target = ? AND log = ? AND table_name = ? ORDER BY id",
        target,
        log,
        table);
  }

  void forgetPassedOver(String table, long id) throws SyncException {
    change(
        "DELETE FROM passed_over WHERE target = ? AND log = ? AND table_name = ? AND id = ?",
        target,
        log,
        table,
        id);
  }

  List<Long> setAside(String table) throws SyncException {
    return numbers(
        "SELECT id FROM set_aside WHERE target = ? AND log = ? AND table_name = ? ORDER BY id",
        target,
        log,
        table);
  }

  /** A row that the target refuses. */
  void setAside(String table, long id, String reason, long wallMillis) throws SyncException {
    change(
        "INSERT INTO set_aside VALUES (?, ?, ?, ?, ?, ?) ON CONFLICT DO UPDATE SET reason ="
            + " excluded.reason, wall_ms = excluded.wall_ms",
        target,
        log,
        table,
        id,
        reason,
        wallMillis);
  }

  /** Lets rows that were set aside be tried again; answers how many. */
  public int retrySetAside() throws SyncException {
    change(
        "INSERT INTO passed_over SELECT target, log, table_name, id FROM set_aside"
            + " WHERE target = ? AND log = ? ON CONFLICT DO NOTHING",
        target,
        log);
    return use(
        "DELETE FROM set_aside WHERE target = ? AND log = ?",
        PreparedStatement::executeUpdate,
        target,
        log);
  }

  void succeeded(long wallMillis) throws SyncException {
    change(
        "INSERT INTO outcome VALUES (?, ?, NULL, '', '') ON CONFLICT DO UPDATE SET success_wall_ms"
            + " = excluded.success_wall_ms, failure = '', next_move = ''",
        target,
        wallMillis);
  }

  void failed(SyncException failure, long wallMillis) throws SyncException {
    change(
        "INSERT INTO outcome VALUES (?, NULL, ?, ?, ?) ON CONFLICT DO UPDATE SET failure_wall_ms ="
            + " excluded.failure_wall_ms, failure = excluded.failure, next_move ="
            + " excluded.next_move",
        target,
        wallMillis,
        failure.what(),
        failure.nextMove());
  }

  /** Rows set aside, and how the latest tries ended. */
  SyncStatus status(List<SyncStatus.Backlog> backlog) throws SyncException {
    List<SyncStatus.SetAside> aside =
        use(
            "SELECT table_name, id, reason FROM set_aside WHERE target = ? AND log = ?"
                + " ORDER BY table_name, id",
            SyncState::setAsideOf,
            target,
            log);
    return use(
        "SELECT success_wall_ms, failure_wall_ms, failure, next_move FROM outcome WHERE target = ?",
        statement -> statusOf(statement, backlog, aside),
        target);
  }

  private static List<SyncStatus.SetAside> setAsideOf(PreparedStatement statement)
      throws SQLException {
    List<SyncStatus.SetAside> aside = new ArrayList<>();
    try (ResultSet rows = statement.executeQuery()) {
      while (rows.next()) {
        aside.add(new SyncStatus.SetAside(rows.getString(1), rows.getLong(2), rows.getString(3)));
      }
    }
    return aside;
  }

  private SyncStatus statusOf(
      PreparedStatement statement,
      List<SyncStatus.Backlog> backlog,
      List<SyncStatus.SetAside> aside)
      throws SQLException {
    try (ResultSet row = statement.executeQuery()) {
      return row.next()
          ? new SyncStatus(
              target,
              backlog,
              aside,
              row.getLong(1),
              row.getLong(2),
              row.getString(3),
              row.getString(4))
          : new SyncStatus(target, backlog, aside, 0, 0, "", "");
    }
  }

  @Override
  public void close() throws SyncException {
    try {
      connection.close();
    } catch (SQLException failure) {
      throw unusable(path, failure);
    }
  }
}
