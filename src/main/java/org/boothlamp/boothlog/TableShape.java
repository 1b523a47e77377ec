package org.boothlamp.boothlog;

import java.sql.SQLException;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Collectors;

/**
 * What a row of one table looks like, from the layout of a log that is sound. Immutable.
 *
 * @param name table
 * @param keyed true if its rows lie in an index and have no row number (WITHOUT ROWID)
 * @param columns in the order they are stored in
 */
record TableShape(String name, boolean keyed, List<Column> columns) {

  /**
   * One column.
   *
   * @param name column
   * @param type INTEGER, REAL, TEXT or BLOB
   * @param mayBeMissing true if a row may have no value there, or may end before it
   * @param isRowNumber true if its value is the row number and is stored only there
   */
  record Column(String name, String type, boolean mayBeMissing, boolean isRowNumber) {}

  /** All tables of a log but SQLite's own, which log it is, and what salvage itself keeps. */
  static List<TableShape> allIn(LogConnection log) throws SQLException {
    List<TableShape> names = new ArrayList<>();
    try (Columns row =
        log.bind(
                "SELECT name, wr FROM pragma_table_list WHERE schema = 'main' AND type = 'table'"
                    + " AND name NOT LIKE 'sqlite!_%' ESCAPE '!'"
                    + " AND name NOT IN ('salvage', 'log_identity')"
                    + " ORDER BY name")
            .rows()) {
      while (row.next()) {
        names.add(new TableShape(row.text(), row.flag(), List.of()));
      }
    }
    List<TableShape> shapes = new ArrayList<>();
    for (TableShape named : names) {
      shapes.add(new TableShape(named.name, named.keyed, columns(log, named.name, named.keyed)));
    }
    return shapes;
  }

  private static List<Column> columns(LogConnection log, String table, boolean keyed)
      throws SQLException {
    record Placed(Column column, long key) {}

    List<Placed> placed = new ArrayList<>();
    try (Columns row =
        log.bind("SELECT name, type, \"notnull\", dflt_value, pk FROM pragma_table_info(?)")
            .text(table)
            .rows()) {
      while (row.next()) {
        String name = row.text();
        String type = row.text();
        boolean optional = !row.flag() | row.text() != null;
        long key = row.whole();
        boolean rowNumber = key > 0 && !keyed && type.equals("INTEGER");
        placed.add(new Placed(new Column(name, type, optional, rowNumber), key));
      }
    }
    if (keyed) {
      // Key columns are stored first, in the order of the key.
      placed.sort(Comparator.comparingLong(each -> each.key == 0 ? Long.MAX_VALUE : each.key));
    }
    return placed.stream().map(Placed::column).toList();
  }

  /** True if these stored values can be a row of this table. */
  boolean fits(Object[] values) {
    if (values.length == 0 || values.length > columns.size()) {
      return false;
    }
    for (int i = 0; i < columns.size(); i++) {
      boolean fits =
          i < values.length ? fits(values[i], columns.get(i)) : columns.get(i).mayBeMissing();
      if (!fits) {
        return false;
      }
    }
    return true;
  }

  private static boolean fits(Object value, Column column) {
    if (column.isRowNumber()) {
      return value == null;
    }
    if (value == null) {
      return column.mayBeMissing();
    }
    return switch (column.type()) {
      case "INTEGER" -> value instanceof Long;
      // A whole number is stored as one, to save room.
      case "REAL" -> value instanceof Double || value instanceof Long;
      case "TEXT" -> value instanceof String;
      case "BLOB" -> value instanceof byte[];
      default -> true;
    };
  }

  /**
   * The statement that puts in a row with so many stored values, unless its key is there already.
   */
  String insert(int values) {
    String names =
        columns.subList(0, values).stream()
            .map(column -> "\"" + column.name() + "\"")
            .collect(Collectors.joining(", "));
    return "INSERT OR IGNORE INTO \""
        + name
        + "\" ("
        + names
        + ") VALUES (?"
        + ", ?".repeat(values - 1)
        + ")";
  }
}
