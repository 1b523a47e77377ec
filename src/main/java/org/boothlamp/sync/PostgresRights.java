package org.boothlamp.sync;

import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;
import org.boothlamp.boothlog.LogRows;

/**
 * What the role of a booth may do with the tables it sends rows to. Immutable.
 *
 * @param lacking tables to which it may not add rows
 * @param beyond tables whose rows it may read, change or remove, which no booth needs
 * @param open tables to which it may add rows of other booths
 */
public record PostgresRights(List<String> lacking, List<String> beyond, List<String> open) {

  private static final String RIGHTS =
      "SELECT c.relname, has_table_privilege(c.oid, 'INSERT'),"
          + " has_table_privilege(c.oid, 'SELECT, UPDATE, DELETE, TRUNCATE'), c.relrowsecurity"
          + " FROM pg_class c JOIN pg_namespace n ON n.oid = c.relnamespace"
          + " WHERE n.nspname = '"
          + PostgresSchema.NAME
          + "' AND c.relkind IN ('r', 'p') ORDER BY 1";

  public PostgresRights {
    lacking = List.copyOf(lacking);
    beyond = List.copyOf(beyond);
    open = List.copyOf(open);
  }

  /**
   * Connects and asks; adds nothing.
   *
   * @throws SyncException if the database is not reached, refuses the role, or lacks a schema step
   */
  public static PostgresRights ask(PostgresTarget target) throws SyncException {
    try (Connection connection = PostgresConnections.open(target)) {
      PostgresSchema.check(connection, target);
      return read(connection);
    } catch (SQLException failure) {
      throw PostgresErrors.explain(failure, target);
    }
  }

  private static PostgresRights read(Connection connection) throws SQLException {
    List<String> tables = LogRows.allTables();
    List<String> lacking = new ArrayList<>();
    List<String> beyond = new ArrayList<>();
    List<String> open = new ArrayList<>();
    try (Statement statement = connection.createStatement();
        ResultSet row = statement.executeQuery(RIGHTS)) {
      while (row.next()) {
        String table = row.getString(1);
        if (tables.contains(table)) {
          addIf(!row.getBoolean(2), table, lacking);
          addIf(row.getBoolean(3), table, beyond);
          addIf(!row.getBoolean(4), table, open);
        }
      }
    }
    return new PostgresRights(lacking, beyond, open);
  }

  private static void addIf(boolean is, String table, List<String> to) {
    if (is) {
      to.add(table);
    }
  }
}
