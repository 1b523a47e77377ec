package org.boothlamp.boothlog;

import java.util.List;

/**
 * A table whose rows are sent on: one line a table, columns are read from the schema. Each has a
 * row number; a row goes with the rows of its children, or not at all. A row that is final never
 * changes again. Immutable.
 *
 * @param name name of the table
 * @param key column that holds the row number
 * @param order whether a later row has a higher number
 * @param finalWhen SQL condition for a row that is final
 * @param children tables whose rows belong to one of this table's, in the order in which to add
 *     them
 * @param parent column of the children that holds this table's row number
 */
record LogTable(
    String name, String key, Order order, String finalWhen, List<String> children, String parent) {

  /** Table of segments. */
  static final String SEGMENT = "segment";

  /** Column of what was said of a segment later, that holds the segment's row number. */
  static final String SEGMENT_SPOKEN_OF = "segment_id";

  /** How the row numbers of a table follow each other. */
  enum Order {
    /** By time: what comes later has a higher number than all before. */
    RISING,
    /** Not by time: a row may come in front of those that are there. */
    ANY
  }

  /** Starts of the monitor; also the column that holds the row number of one. */
  static final String BOOT = "boot";

  /** Corrections of the time of day of a start's rows. */
  static final String CLOCK_CORRECTION = "clock_correction";

  /** Calibrations, whose row numbers other tables hold under several names. */
  static final String CALIBRATION = "calibration";

  /** Withdrawals, whose row numbers are those of their calibrations. */
  static final String WITHDRAWAL = "calibration_withdrawal";

  private static final String ALWAYS = "1";

  /** In the order in which they are sent. A request to forget comes last. */
  static final List<LogTable> ALL =
      List.of(
          alone(BOOT, ALWAYS),
          alone(CLOCK_CORRECTION, ALWAYS),
          alone("sign_in", ALWAYS),
          alone("touch", ALWAYS),
          // The end of an event is written later, but never by another start of the monitor.
          alone("event", "length_s IS NOT NULL OR boot < (SELECT max(id) FROM boot)"),
          new LogTable(
              CALIBRATION,
              "id",
              Order.RISING,
              "id IN (SELECT calibration_id FROM calibration_finish)",
              // The end comes last: from then on a calibration takes no point.
              List.of("calibration_point", "calibration_discard", "calibration_finish"),
              "calibration_id"),
          new LogTable(WITHDRAWAL, "calibration_id", Order.ANY, ALWAYS, List.of(), ""),
          alone("calibration_check", ALWAYS),
          new LogTable(
              SEGMENT,
              "id",
              Order.RISING,
              "end_word IS NOT NULL",
              List.of("segment_window", "excursion", "trace"),
              "segment_id"),
          alone("bead", ALWAYS),
          alone("reference_weld", ALWAYS),
          alone("forgotten", ALWAYS));

  private static LogTable alone(String name, String finalWhen) {
    return new LogTable(name, "id", Order.RISING, finalWhen, List.of(), "");
  }

  /** The table with a name, or null if its rows are not sent on. */
  static LogTable named(String name) {
    return ALL.stream().filter(table -> table.name().equals(name)).findFirst().orElse(null);
  }
}
