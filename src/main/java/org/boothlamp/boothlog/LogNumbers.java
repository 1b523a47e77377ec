package org.boothlamp.boothlog;

import java.sql.SQLException;
import java.util.Map;

/**
 * Row numbers that are taken. Immutable.
 *
 * @param boot highest number of a start
 * @param segment highest number of a segment
 * @param touch highest number of a touch
 * @param event highest number of an event
 */
record LogNumbers(long boot, long segment, long touch, long event) {

  /** Makes a log deal out higher numbers only; inside a transaction. */
  void keepFree(LogConnection log) throws SQLException {
    keepFree(log, Map.of("boot", boot, "segment", segment, "touch", touch, "event", event));
  }

  /** Makes a log deal out higher numbers only, by table; inside a transaction. */
  static void keepFree(LogConnection log, Map<String, Long> taken) throws SQLException {
    for (Map.Entry<String, Long> table : taken.entrySet()) {
      log.bind(
              "INSERT INTO sqlite_sequence (name, seq) SELECT ?, 0 WHERE NOT EXISTS"
                  + " (SELECT 1 FROM sqlite_sequence WHERE name = ?)")
          .text(table.getKey())
          .text(table.getKey())
          .run();
      log.bind("UPDATE sqlite_sequence SET seq = max(seq, ?) WHERE name = ?")
          .whole(table.getValue())
          .text(table.getKey())
          .run();
    }
  }
}
