package org.boothlamp.boothlog;

import java.sql.SQLException;

/**
 * Who welds from now on, against what. Immutable.
 *
 * @param id row number in the log
 * @param wallMillis time of day, ms since the epoch
 * @param trainee trainee code; empty signs out
 * @param procedureId procedure, or empty
 * @param pass pass name, or empty
 */
public record SignIn(long id, long wallMillis, String trainee, String procedureId, String pass) {

  static final String COLUMNS = "id, wall_ms, trainee, procedure_id, pass";

  static SignIn of(Columns row) throws SQLException {
    return new SignIn(row.whole(), row.whole(), row.text(), row.text(), row.text());
  }

  /** True if nobody is signed in from now on. */
  public boolean isSignOut() {
    return trainee.isEmpty();
  }
}
