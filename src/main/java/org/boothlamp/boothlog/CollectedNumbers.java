package org.boothlamp.boothlog;

import java.sql.SQLException;
import java.util.HashMap;
import java.util.Map;

/**
 * Which number a calibration has in a collected log. Known by its log alone: a booth that was given
 * another id goes on with the calibrations it has. Confined to one thread.
 */
final class CollectedNumbers {

  private static final String NUMBER =
      "SELECT id FROM collected_row WHERE log = ? AND table_name = '"
          + LogTable.CALIBRATION
          + "' AND original_id = ?";
  private static final String ROW = "SELECT count(*) FROM " + LogTable.CALIBRATION + " WHERE id = ";

  private record Original(String log, long number) {}

  private final LogConnection log;

  /** Every run names two. */
  private final Map<Original, Long> known = new HashMap<>();

  CollectedNumbers(LogConnection log) {
    this.log = log;
  }

  /** The number here, or 0 if none was dealt out. */
  long known(String originalLog, long originalNumber) throws SQLException {
    Original original = new Original(originalLog, originalNumber);
    Long id = known.get(original);
    if (id != null) {
      return id;
    }
    try (Columns row = log.bind(NUMBER).text(originalLog).whole(originalNumber).rows()) {
      if (!row.next()) {
        return 0;
      }
      long found = row.whole();
      known.put(original, found);
      return found;
    }
  }

  /** False while only other rows name it. */
  boolean isCollected(long id) throws SQLException {
    return log.number(ROW + id) > 0;
  }

  /** After a transaction was undone, and its numbers with it. */
  void forget() {
    known.clear();
  }
}
