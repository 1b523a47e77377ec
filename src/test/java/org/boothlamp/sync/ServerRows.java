package org.boothlamp.sync;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import org.boothlamp.boothlog.LogRows;
import org.boothlamp.boothlog.RowGroup;
import org.boothlamp.boothlog.StoredRow;
import org.boothlamp.testing.SyncServer;

/** Holds every row of a log against the server's: there once, and the same in every column. */
final class ServerRows {

  private static final Comparator<StoredRow> BY_KEY =
      Comparator.comparing(row -> (Long) row.values()[0]);

  /** First columns of tables whose rows belong to others. */
  private static final Set<String> PARENTS = Set.of("segment_id", "calibration_id");

  private final SyncServer server;

  ServerRows(SyncServer server) {
    this.server = server;
  }

  /** All final rows of the log, each once, and no others of this booth. */
  void assertSame(Path log, String booth) throws SQLException {
    try (LogRows local = LogRows.open(log);
        Connection connection = server.connect()) {
      for (List<StoredRow> rows : byTable(local).values()) {
        assertSame(connection, booth, local.identity(), rows);
      }
    }
  }

  private static Map<String, List<StoredRow>> byTable(LogRows local) {
    Map<String, List<StoredRow>> tables = new TreeMap<>();
    for (String table : LogRows.tables()) {
      List<RowGroup> groups = local.next(table, 0, Integer.MAX_VALUE, Long.MAX_VALUE).groups();
      for (RowGroup group : groups) {
        for (StoredRow row : group.rows()) {
          tables.computeIfAbsent(row.layout().table(), name -> new ArrayList<>()).add(row);
        }
      }
    }
    // A stable sort: children of a segment keep their order.
    tables.values().forEach(rows -> rows.sort(BY_KEY));
    return tables;
  }

  private static void assertSame(
      Connection connection, String booth, String log, List<StoredRow> rows) throws SQLException {
    String table = rows.get(0).layout().table();
    String sql =
        "SELECT \""
            + String.join("\", \"", rows.get(0).layout().columns())
            + "\", from_log FROM boothlamp."
            + table
            + " WHERE from_booth = ? ORDER BY "
            + (PARENTS.contains(rows.get(0).layout().columns().get(0)) ? "1, 2" : "1");
    try (PreparedStatement statement = connection.prepareStatement(sql)) {
      statement.setString(1, booth);
      try (ResultSet found = statement.executeQuery()) {
        for (StoredRow row : rows) {
          assertTrue(found.next(), () -> table + " lacks " + row.values()[0]);
          for (int i = 0; i < row.values().length; i++) {
            assertSame(row.values()[i], found.getObject(i + 1));
          }
          assertEquals(log, found.getString("from_log"));
        }
        assertTrue(!found.next(), table + " has more rows than the log");
      }
    }
  }

  private static void assertSame(Object expected, Object actual) {
    if (expected instanceof byte[] bytes) {
      assertArrayEquals(bytes, (byte[]) actual);
    } else {
      assertEquals(expected, actual);
    }
  }
}
