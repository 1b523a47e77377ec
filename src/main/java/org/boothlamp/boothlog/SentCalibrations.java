package org.boothlamp.boothlog;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import org.boothlamp.calibration.CalibrationHistory;

/** Reads calibrations where logs have sent them: from tables with the columns of the log. */
public final class SentCalibrations {

  private SentCalibrations() {}

  /**
   * Those of one log, with the numbers they have there.
   *
   * @param prefix stands before the names of the log's tables
   * @param fromLog identity of the log, in column {@code from_log}
   */
  public static CalibrationHistory read(Connection database, String prefix, String fromLog)
      throws SQLException {
    return CalibrationReading.history(
        (columns, table, order) -> {
          String sql =
              "SELECT "
                  + columns
                  + " FROM "
                  + prefix
                  + table
                  + " WHERE from_log = ? ORDER BY "
                  + order;
          PreparedStatement statement = database.prepareStatement(sql);
          statement.closeOnCompletion();
          statement.setString(1, fromLog);
          return new Columns(statement.executeQuery());
        });
  }
}
