package org.boothlamp.boothlog;

import java.sql.ResultSet;
import java.sql.SQLException;

/** Takes the values of each row from left to right. A NULL comes out as NaN. */
final class Columns implements AutoCloseable {

  private final ResultSet rows;
  private int column;

  Columns(ResultSet rows) {
    this.rows = rows;
  }

  boolean next() throws SQLException {
    column = 0;
    return rows.next();
  }

  long whole() throws SQLException {
    return rows.getLong(++column);
  }

  double real() throws SQLException {
    double value = rows.getDouble(++column);
    return value == 0 && rows.wasNull() ? Double.NaN : value;
  }

  String text() throws SQLException {
    return rows.getString(++column);
  }

  boolean flag() throws SQLException {
    return whole() != 0;
  }

  byte[] bytes() throws SQLException {
    return rows.getBytes(++column);
  }

  /** Long, Double, String, byte array or null: whatever is stored. */
  Object stored() throws SQLException {
    Object value = rows.getObject(++column);
    return value instanceof Integer whole ? Long.valueOf(whole) : value;
  }

  @Override
  public void close() throws SQLException {
    rows.close();
  }
}
