package org.boothlamp.boothlog;

import java.sql.SQLException;

/** The tables of calibrations, wherever they are. */
@FunctionalInterface
interface CalibrationTables {

  /**
   * Rows of a table.
   *
   * @param columns as in the log, divided by commas
   * @param table as in the log
   * @param order likewise
   */
  Columns rows(String columns, String table, String order) throws SQLException;
}
