package org.boothlamp.boothlog;

import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.sql.Types;

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

  /** A value that is not known: NULL. */
  Binding unknown() throws SQLException {
    statement.setNull(++column, Types.NULL);
    return this;
  }

  Binding flag(boolean value) throws SQLException {
    return whole(value ? 1 : 0);
  }

  Binding bytes(byte[] value) throws SQLException {
    statement.setBytes(++column, value);
    return this;
  }

  /** A value as {@link Columns#stored} gives it. */
  Binding stored(Object value) throws SQLException {
    statement.setObject(++column, value);
    return this;
  }

  /** Runs it; answers how many rows changed. */
  int runAndCount() throws SQLException {
    return statement.executeUpdate();
  }

  void run() throws SQLException {
    statement.executeUpdate();
  }

  Columns rows() throws SQLException {
    return new Columns(statement.executeQuery());
  }
}
