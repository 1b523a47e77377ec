package org.boothlamp.boothlog;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.Statement;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class BoothLogTest {

  @TempDir Path folder;

  private Path path() {
    return folder.resolve(BoothLog.FILE_NAME);
  }

  private static void assertRefused(Path path, String what, String nextMove) {
    BoothLogException refused =
        assertThrows(BoothLogException.class, () -> BoothLog.open(path).close());
    assertTrue(refused.getMessage().contains(path.toString()), refused.getMessage());
    assertTrue(refused.getMessage().contains(what), refused.getMessage());
    assertTrue(refused.nextMove().contains(nextMove), refused.getMessage());
  }

  private void executeElsewhere(String sql) throws Exception {
    try (Connection other = DriverManager.getConnection("jdbc:sqlite:" + path());
        Statement statement = other.createStatement()) {
      statement.executeUpdate(sql);
    }
  }

  @Test
  void shouldMakeFileThatKeepsWhatItCommits() throws Exception {
    try (BoothLog log = BoothLog.open(path())) {
      assertEquals(SchemaSteps.newest(), log.connection().number("PRAGMA user_version"));
      assertEquals("wal", log.connection().text("PRAGMA journal_mode"));
      // 2 is FULL: "sync after each transaction", SQLite's documentation of PRAGMA synchronous
      assertEquals(2, log.connection().number("PRAGMA synchronous"));
      assertEquals(1, log.connection().number("PRAGMA foreign_keys"));
    }
  }

  @Test
  void shouldMakeFolderIfOnlyThatIsMissing() {
    Path path = folder.resolve("log").resolve(BoothLog.FILE_NAME);
    BoothLog.open(path).close();
    assertTrue(Files.exists(path));
  }

  @Test
  void shouldTakeAnyCharacterInThePath() {
    Path path = folder.resolve("a b?c#d%20;é.db");
    BoothLog.open(path).close();
    assertTrue(Files.exists(path));
    BoothLogReader.open(path).close();
  }

  @Test
  void shouldOpenAgainWhatItMade() throws Exception {
    BoothLog.open(path()).close();
    try (BoothLog log = BoothLog.open(path())) {
      assertEquals(0, log.connection().number("SELECT count(*) FROM segment"));
    }
  }

  @Test
  void shouldRefuseMissingFolders() {
    assertRefused(
        folder.resolve("no").resolve("such").resolve("booth.db"),
        "neither its folder nor the folder above it exists",
        "make the folder " + folder.resolve("no").resolve("such"));
  }

  @Test
  void shouldRefusePathBelowFile() throws Exception {
    Path file = Files.writeString(folder.resolve("file"), "text");
    assertRefused(file.resolve("booth.db"), "which is a file", "correct the log path");
  }

  @Test
  void shouldRefuseFolder() {
    assertRefused(folder, "is a folder", "name a file in it");
  }

  @Test
  void shouldRefuseFolderThatTakesNoFiles() {
    // Nobody, not even root, makes files in /proc.
    assertRefused(Path.of("/proc/booth.db"), "cannot be opened", "check the rights");
    assertRefused(Path.of("/proc/log/booth.db"), "cannot be made", "make the folder");
  }

  @Test
  void shouldRefuseFileThatIsNoDatabase() throws Exception {
    Files.writeString(path(), "these are the notes of the instructor\n".repeat(100));
    assertRefused(path(), "is not a database file", "move that file away");
  }

  @Test
  void shouldRefuseDatabaseOfAnotherProgram() throws Exception {
    executeElsewhere("CREATE TABLE recipe (name TEXT)");
    assertRefused(path(), "is a database of another program", "move that file away");
  }

  @Test
  void shouldRefuseLogOfNewerVersion() throws Exception {
    BoothLog.open(path()).close();
    executeElsewhere("PRAGMA user_version = 7");
    assertRefused(
        path(),
        "its schema is 7, this program knows " + SchemaSteps.newest(),
        "install the newer version");
    assertThrows(BoothLogException.class, () -> BoothLogReader.open(path()));
  }

  @Test
  void shouldRefuseSecondMonitor() {
    try (BoothLog first = BoothLog.open(path())) {
      assertRefused(first.path(), "another monitor writes to it", "stop that one");
    }
    BoothLog.open(path()).close();
  }

  @Test
  void shouldUndoSchemaStepThatFails() throws Exception {
    // One of our tables is there already, in a file that says it is new.
    executeElsewhere(
        "PRAGMA application_id = " + SchemaSteps.APPLICATION_ID + "; CREATE TABLE touch (id)");
    assertThrows(BoothLogException.class, () -> BoothLog.open(path()).close());
    try (Connection other = DriverManager.getConnection("jdbc:sqlite:" + path());
        Statement statement = other.createStatement();
        var rows = statement.executeQuery("SELECT count(*) FROM sqlite_schema")) {
      assertEquals(1, rows.getLong(1));
    }
  }
}
