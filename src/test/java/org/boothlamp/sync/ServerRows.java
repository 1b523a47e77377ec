package org.boothlamp.sync;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import org.boothlamp.boothlog.LogRows;
import org.boothlamp.boothlog.RowGroup;
import org.boothlamp.boothlog.RowReading;
import org.boothlamp.boothlog.StoredRow;
import org.boothlamp.testing.SyncServer;

/** Holds every row of a log against the server's: there once, and the same in every column. */
final class ServerRows {

  private final SyncServer server;

  ServerRows(SyncServer server) {
    this.server = server;
  }

  /** All rows of the log, and no others of this booth; answers how many of all tables. */
  long assertSame(Path log, String booth) throws SQLException {
    long rows = 0;
    try (LogRows local = LogRows.open(log);
        Connection connection = server.connect()) {
      for (String table : LogRows.tables()) {
        RowReading reading = local.next(table, 0, Integer.MAX_VALUE, Long.MAX_VALUE);
        assertEquals(
            reading.groups().size(),
            server.number(
                "SELECT count(*) FROM boothlamp." + table + " WHERE from_booth = '" + booth + "'"),
            table);
        for (RowGroup group : reading.groups()) {
          for (StoredRow row : group.rows()) {
            assertSame(connection, booth, local.identity(), row);
            rows++;
          }
        }
      }
    }
    assertEquals(rows, count(booth), "rows of all tables");
    return rows;
  }

  private long count(String booth) {
    long rows = 0;
    for (String table :
        new String[] {
          "boot",
          "sign_in",
          "touch",
          "event",
          "segment",
          "segment_window",
          "excursion",
          "trace",
          "forgotten"
        }) {
      rows +=
          server.number(
              "SELECT count(*) FROM boothlamp." + table + " WHERE from_booth = '" + booth + "'");
    }
    return rows;
  }

  private static void assertSame(Connection connection, String booth, String log, StoredRow row)
      throws SQLException {
    String columns = "\"" + String.join("\", \"", row.layout().columns()) + "\"";
    String key = row.layout().columns().get(0);
    String second = row.layout().columns().get(1);
    boolean child = key.equals("segment_id");
    String sql =
        "SELECT "
            + columns
            + " FROM boothlamp."
            + row.layout().table()
            + " WHERE from_booth = ? AND from_log = ? AND "
            + key
            + " = ?"
            + (child ? " AND " + second + " = ?" : "");
    try (PreparedStatement statement = connection.prepareStatement(sql)) {
      statement.setString(1, booth);
      statement.setString(2, log);
      statement.setLong(3, (Long) row.values()[0]);
      if (child) {
        statement.setLong(4, (Long) row.values()[1]);
      }
      try (ResultSet found = statement.executeQuery()) {
        assertTrue(found.next(), () -> row.layout().table() + " " + row.values()[0]);
        for (int i = 0; i < row.values().length; i++) {
          assertSame(row.values()[i], found.getObject(i + 1));
        }
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
