package org.boothlamp.sync;

import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;

/** The tables of deploy/postgresql as this program needs them. */
final class PostgresSchema {

  /** Schema that holds everything. */
  static final String NAME = "boothlamp";

  /** The last numbered step that this program relies on. */
  static final int NEEDED_STEP = 4;

  private PostgresSchema() {}

  /** Refuses a database that lacks steps. */
  static void check(Connection connection, PostgresTarget target) throws SyncException {
    try (Statement statement = connection.createStatement();
        ResultSet row =
            statement.executeQuery("SELECT max(version) FROM " + NAME + ".schema_step")) {
      row.next();
      if (row.getInt(1) < NEEDED_STEP) {
        throw SyncException.setUp(
            target.name()
                + " has an older schema: its last step is "
                + row.getInt(1)
                + ", this program needs "
                + NEEDED_STEP,
            "let its owner run the newer numbered files of deploy/postgresql",
            null);
      }
    } catch (SQLException failure) {
      throw PostgresErrors.explain(failure, target);
    }
  }
}
