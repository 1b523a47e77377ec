package org.boothlamp.boothlog;

import java.util.List;

/**
 * A table whose rows are sent on: one line a table, columns are read from the schema. Each has a
 * row number {@code id}; a row goes with the rows of its children, or not at all. A row that is
 * final never changes again. Immutable.
 *
 * @param name name of the table
 * @param finalWhen SQL condition for a row that is final
 * @param children tables whose {@code segment_id} is this table's row number
 */
record LogTable(String name, String finalWhen, List<String> children) {

  /** Column of children, and of what was said of a segment, that holds the segment's row number. */
  static final String PARENT = "segment_id";

  /** Table of segments. */
  static final String SEGMENT = "segment";

  /** Column that holds the row number of a boot. */
  static final String BOOT = "boot";

  private static final String ALWAYS = "1";

  /** In the order in which they are sent. A request to forget comes last. */
  static final List<LogTable> ALL =
      List.of(
          new LogTable(BOOT, ALWAYS, List.of()),
          new LogTable("sign_in", ALWAYS, List.of()),
          new LogTable("touch", ALWAYS, List.of()),
          // The end of an event is written later, but never by another start of the monitor.
          new LogTable(
              "event", "length_s IS NOT NULL OR boot < (SELECT max(id) FROM boot)", List.of()),
          new LogTable(
              "segment", "end_word IS NOT NULL", List.of("segment_window", "excursion", "trace")),
          new LogTable("bead", ALWAYS, List.of()),
          new LogTable("reference_weld", ALWAYS, List.of()),
          new LogTable("forgotten", ALWAYS, List.of()));

  /** The table with a name, or null if its rows are not sent on. */
  static LogTable named(String name) {
    return ALL.stream().filter(table -> table.name().equals(name)).findFirst().orElse(null);
  }
}
