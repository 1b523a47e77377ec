package org.boothlamp.boothlog;

import java.sql.SQLException;

/**
 * A damaged file whose rows have been taken over. Immutable.
 *
 * @param file its name, without folder
 * @param savedRows rows taken over
 * @param lostPages pages that could not be read
 * @param lostRows rows on other pages that were not whole
 */
record SalvageRow(String file, long savedRows, long lostPages, long lostRows) implements LogRow {

  @Override
  public void write(LogConnection log, LogStart start) throws SQLException {
    log.bind(
            "INSERT INTO salvage (file, saved_rows, lost_pages, lost_rows) VALUES (?, ?, ?, ?)"
                + " ON CONFLICT (file) DO NOTHING")
        .text(file)
        .whole(savedRows)
        .whole(lostPages)
        .whole(lostRows)
        .run();
  }

  /** What was saved and what was not, for people. */
  String words() {
    StringBuilder words = new StringBuilder(file).append(": ").append(savedRows);
    words.append(" rows saved, ").append(lostPages).append(" pages unreadable");
    if (lostRows > 0) {
      words.append(", ").append(lostRows).append(" rows broken");
    }
    return words.toString();
  }
}
