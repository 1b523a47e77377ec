package org.boothlamp.boothlog;

import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;

/**
 * A table and its columns as the schema has them. Immutable.
 *
 * @param table name of the table
 * @param columns names of its columns, in the order of the schema
 * @param types what each column holds: INTEGER, REAL, TEXT or BLOB; empty if that is not known
 */
public record RowLayout(String table, List<String> columns, List<String> types) {

  public RowLayout {
    columns = List.copyOf(columns);
    types = List.copyOf(types);
  }

  static RowLayout of(LogConnection log, String table) throws SQLException {
    List<String> columns = new ArrayList<>();
    List<String> types = new ArrayList<>();
    try (Columns row =
        log.bind("SELECT name, type FROM pragma_table_info(?) ORDER BY cid").text(table).rows()) {
      while (row.next()) {
        columns.add(row.text());
        types.add(row.text());
      }
    }
    return new RowLayout(table, columns, types);
  }

  /** The columns, divided by commas. */
  public String columnList() {
    return String.join(", ", columns);
  }

  /** The row that is next, as stored. */
  StoredRow read(Columns row) throws SQLException {
    Object[] values = new Object[columns.size()];
    for (int i = 0; i < values.length; i++) {
      values[i] = row.stored();
    }
    return new StoredRow(this, values);
  }
}
