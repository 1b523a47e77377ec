package org.boothlamp.boothlog;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.HashMap;
import java.util.Map;

/**
 * One connection to the log with its prepared statements, each prepared once. Transactions are
 * begun and ended in plain SQL. Confined to one thread at a time.
 */
final class LogConnection implements AutoCloseable {

  private final Connection connection;
  private final Map<String, PreparedStatement> statements = new HashMap<>();

  LogConnection(Connection connection) {
    this.connection = connection;
  }

  /** For what only the driver can do. */
  Connection connection() {
    return connection;
  }

  /** Runs one or more statements that answer nothing. */
  void execute(String sql) throws SQLException {
    try (Statement statement = connection.createStatement()) {
      statement.executeUpdate(sql);
    }
  }

  /** The first column of the only row. */
  long number(String sql) throws SQLException {
    try (Statement statement = connection.createStatement();
        ResultSet rows = statement.executeQuery(sql)) {
      return rows.next() ? rows.getLong(1) : 0;
    }
  }

  /** The first column of the only row, as text. */
  String text(String sql) throws SQLException {
    try (Statement statement = connection.createStatement();
        ResultSet rows = statement.executeQuery(sql)) {
      return rows.next() ? rows.getString(1) : null;
    }
  }

  /** A statement ready for its values; the next call with the same text ends this use. */
  Binding bind(String sql) throws SQLException {
    PreparedStatement statement = statements.get(sql);
    if (statement == null) {
      statement = connection.prepareStatement(sql);
      statements.put(sql, statement);
    }
    return new Binding(statement);
  }

  /** The driver gives a statement up that has failed: the next use prepares it again. */
  void forgetStatements() throws SQLException {
    for (PreparedStatement statement : statements.values()) {
      statement.close();
    }
    statements.clear();
  }

  @Override
  public void close() throws SQLException {
    connection.close();
  }
}
