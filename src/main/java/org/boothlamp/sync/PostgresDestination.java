package org.boothlamp.sync;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.sql.Statement;
import java.sql.Types;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.boothlamp.boothlog.RowGroup;
import org.boothlamp.boothlog.RowLayout;
import org.boothlamp.boothlog.StoredRow;
import org.tinylog.Logger;

/**
 * Adds rows to a database that speaks PostgreSQL's protocol: each batch in one transaction, by
 * inserts of many rows that pass over a row that is there already. That needs the right to insert
 * and no other: COPY cannot pass over rows, and a named conflict column would have to be readable.
 */
final class PostgresDestination implements Destination {

  /** SQLSTATE undefined_object. */
  private static final String UNKNOWN_SETTING = "42704";

  private final PostgresTarget target;
  private Connection connection;

  PostgresDestination(PostgresTarget target) {
    this.target = target;
  }

  @Override
  public SyncTarget target() {
    return target;
  }

  @Override
  public void open() throws SyncException {
    if (connection != null) {
      return;
    }
    connection = PostgresConnections.open(target);
    PostgresSchema.check(connection, target);
    commitForGood();
    try {
      connection.setAutoCommit(false);
    } catch (SQLException failure) {
      throw PostgresErrors.explain(failure, target);
    }
  }

  /**
   * A server may be set up to say that it has committed before it has: the mark must not move over
   * such rows. A database that does not know the setting has no such haste.
   */
  private void commitForGood() throws SyncException {
    try (Statement statement = connection.createStatement()) {
      statement.execute("SET synchronous_commit TO on");
    } catch (SQLException failure) {
      if (!UNKNOWN_SETTING.equals(failure.getSQLState())) {
        throw PostgresErrors.explain(failure, target);
      }
    }
  }

  @Override
  public void send(Batch batch) throws SyncException {
    open();
    try {
      for (List<StoredRow> rows : byTable(batch)) {
        insert(batch, rows);
      }
      connection.commit();
    } catch (SQLException failure) {
      SyncException explained = PostgresErrors.explain(failure, target);
      undo(explained);
      throw explained;
    }
  }

  private static Iterable<List<StoredRow>> byTable(Batch batch) {
    Map<String, List<StoredRow>> rows = new LinkedHashMap<>();
    for (RowGroup group : batch.groups()) {
      for (StoredRow row : group.rows()) {
        rows.computeIfAbsent(row.layout().table(), table -> new ArrayList<>()).add(row);
      }
    }
    return rows.values();
  }

  private void insert(Batch batch, List<StoredRow> rows) throws SQLException {
    try (PreparedStatement statement =
        connection.prepareStatement(insertInto(rows.get(0).layout()))) {
      for (StoredRow row : rows) {
        bind(batch, row, statement);
        statement.addBatch();
      }
      statement.executeBatch();
    }
  }

  private static String insertInto(RowLayout layout) {
    StringBuilder sql = new StringBuilder("INSERT INTO ");
    sql.append(PostgresSchema.NAME).append(".\"").append(layout.table()).append("\" (");
    sql.append("from_booth, from_log");
    layout.columns().forEach(column -> sql.append(", \"").append(column).append('"'));
    sql.append(") VALUES (?, ?").append(", ?".repeat(layout.columns().size())).append(')');
    return sql.append(" ON CONFLICT DO NOTHING").toString();
  }

  private static void bind(Batch batch, StoredRow row, PreparedStatement statement)
      throws SQLException {
    statement.setString(1, batch.booth());
    statement.setString(2, batch.log());
    for (int i = 0; i < row.values().length; i++) {
      bind(row.values()[i], row.layout().types().get(i), i + 3, statement);
    }
  }

  private static void bind(Object value, String type, int place, PreparedStatement statement)
      throws SQLException {
    if (value == null) {
      statement.setNull(place, nullType(type));
    } else if (value instanceof byte[] blob) {
      statement.setBytes(place, blob);
    } else if (value instanceof Long whole) {
      statement.setLong(place, whole);
    } else if (value instanceof Double real) {
      statement.setDouble(place, real);
    } else {
      statement.setString(place, (String) value);
    }
  }

  private static int nullType(String type) {
    return switch (type) {
      case "INTEGER" -> Types.BIGINT;
      case "REAL" -> Types.DOUBLE;
      case "BLOB" -> Types.BINARY;
      default -> Types.VARCHAR;
    };
  }

  /** A connection that cannot even undo is of no use any more. */
  private void undo(SyncException failure) {
    try {
      connection.rollback();
    } catch (SQLException alsoFailed) {
      failure.addSuppressed(alsoFailed);
      close();
    }
  }

  @Override
  public void close() {
    if (connection == null) {
      return;
    }
    try {
      connection.close();
    } catch (SQLException failure) {
      Logger.debug(failure, "sync: the connection to {} did not close cleanly", target.name());
    }
    connection = null;
  }
}
