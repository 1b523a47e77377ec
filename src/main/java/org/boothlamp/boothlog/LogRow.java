package org.boothlamp.boothlog;

import java.sql.SQLException;

/**
 * One row on its way into the log. Its row number is fixed before the first try, and writing it a
 * second time changes nothing: a transaction that failed, or only seemed to fail, can be repeated.
 */
@FunctionalInterface
interface LogRow {

  /** Writes the row of this start inside the transaction that is open. */
  void write(LogConnection log, LogStart start) throws SQLException;

  /** True for what a full disk, or a full memory, can do without. */
  default boolean isBulk() {
    return false;
  }
}
