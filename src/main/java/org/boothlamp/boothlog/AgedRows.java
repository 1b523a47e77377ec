package org.boothlamp.boothlog;

import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;

/**
 * Rows of one kind that are deleted when they are old. Only rows that can no longer change, and
 * whose time of day is known. Immutable.
 *
 * @param table whose rows say how old they are
 * @param select the next of those before a time, after a time and row number
 * @param delete removes one by the row number
 * @param one word for one of them
 * @param many word for several
 */
record AgedRows(String table, String select, String delete, String one, String many) {

  private static final String OF_TIMED_START =
      "boot IN (SELECT id FROM boot WHERE clock_trusted = 1)";
  private static final String OF_TIMED_MACHINE =
      "(machine_boot IS NULL OR machine_boot NOT IN (SELECT machine_boot FROM boot"
          + " WHERE clock_trusted = 0 AND machine_boot IS NOT NULL))";

  static final AgedRows RUNS =
      aged("segment", "start_wall_ms", OF_TIMED_START).called("run", "runs");
  static final AgedRows TOUCHES =
      aged("touch", "start_wall_ms", OF_TIMED_START).called("touch", "touches");
  static final AgedRows EVENTS =
      aged("event", "start_wall_ms", OF_TIMED_START).called("event", "events");
  static final AgedRows SIGN_INS =
      aged("sign_in", "wall_ms", OF_TIMED_MACHINE).called("sign-in", "sign-ins");
  static final AgedRows TRACES =
      new AgedRows(
          "segment",
          select(
              "segment",
              "start_wall_ms",
              OF_TIMED_START
                  + " AND EXISTS (SELECT 1 FROM trace WHERE trace.segment_id = segment.id)"),
          "DELETE FROM trace WHERE segment_id = ?",
          "trace",
          "traces");

  /** A row by its age. */
  record Row(long id, long wallMillis) {

    /** In front of every row. */
    static final Row BEFORE_ALL = new Row(Long.MIN_VALUE, Long.MIN_VALUE);
  }

  private static AgedRows aged(String table, String wallColumn, String timed) {
    return new AgedRows(
        table,
        select(table, wallColumn, timed),
        "DELETE FROM " + table + " WHERE id = ?",
        table,
        table);
  }

  /**
   * Along the index of the time, so that however many rows are young, none of them is looked at.
   */
  private static String select(String table, String wallColumn, String timed) {
    return "SELECT id, "
        + wallColumn
        + " FROM "
        + table
        + " WHERE "
        + wallColumn
        + " < ? AND ("
        + wallColumn
        + ", id) > (?, ?) AND ("
        + LogTable.named(table).finalWhen()
        + ") AND "
        + timed
        + " ORDER BY "
        + wallColumn
        + ", id LIMIT ?";
  }

  private AgedRows called(String nameOfOne, String nameOfMany) {
    return new AgedRows(table, select, delete, nameOfOne, nameOfMany);
  }

  /** Those before a time of day that come after a row, the oldest first. */
  List<Row> next(LogConnection log, long beforeWallMillis, Row after, int most)
      throws SQLException {
    Binding question =
        log.bind(select)
            .whole(beforeWallMillis)
            .whole(after.wallMillis())
            .whole(after.id())
            .whole(most);
    List<Row> rows = new ArrayList<>();
    try (Columns row = question.rows()) {
      while (row.next()) {
        rows.add(new Row(row.whole(), row.whole()));
      }
    }
    return rows;
  }

  void delete(LogConnection log, long id) throws SQLException {
    log.bind(delete).whole(id).run();
  }

  /** "1 run", "3 runs". */
  String counted(long count) {
    return count + " " + (count == 1 ? one : many);
  }
}
