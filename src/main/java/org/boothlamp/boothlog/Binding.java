package org.boothlamp.boothlog;

import java.sql.PreparedStatement;
import java.sql.SQLException;

/** Puts values into a statement from left to right. A NaN goes in as NULL. */
final class Binding {

  private final PreparedStatement statement;
  private int column;

  Binding(PreparedStatement statement) {
    this.statement = statement;
  }

  Binding whole(long value) throws SQLException {
    statement.setLong(++column, value);
    return this;
  }

  Binding real(double value) throws SQLException {
    statement.setDouble(++column, value);
    return this;
  }

  Binding text(String value) throws SQLException {
    statement.setString(++column, value);
    return this;
  }

  Binding flag(boolean value) throws SQLException {
    return whole(value ? 1 : 0);
  }

  Binding bytes(byte[] value) throws SQLException {
    statement.setBytes(++column, value);
    return this;
  }

  /** A value of whatever kind SQLite keeps; null is NULL. */
  Binding any(Object value) throws SQLException {
    statement.setObject(++column, value);
    return this;
  }

  /** Runs it and tells how many rows it changed. */
  int runCounting() throws SQLException {
    return statement.executeUpdate();
  }

  void run() throws SQLException {
    statement.executeUpdate();
  }

  Columns rows() throws SQLException {
    return new Columns(statement.executeQuery());
  }
}
