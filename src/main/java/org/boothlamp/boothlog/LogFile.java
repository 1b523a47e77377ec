package org.boothlamp.boothlog;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.SQLException;
import org.sqlite.SQLiteConfig;

/** Opens the file behind the log, and says in plain words why it cannot be opened. */
final class LogFile {

  /** How long a short command waits for another writer to finish. */
  static final int COMMAND_BUSY_MILLIS = 5_000;

  /** Longest write-ahead file that is kept between checkpoints, bytes. */
  private static final int KEPT_WAL_BYTES = 4 << 20;

  private LogFile() {}

  /** Opens for writing; makes the file, and its folder if only that is missing. */
  static LogConnection openForWriting(Path path, int busyMillis) {
    prepareFolder(path);
    try {
      return prepared(path, connect(path, writing(busyMillis), ""));
    } catch (SQLException failure) {
      throw explain(path, failure);
    }
  }

  private static SQLiteConfig writing(int busyMillis) {
    SQLiteConfig config = new SQLiteConfig();
    config.setBusyTimeout(busyMillis);
    config.enforceForeignKeys(true);
    // FULL: a commit is on the disk when it returns, also if the power goes.
    config.setSynchronous(SQLiteConfig.SynchronousMode.FULL);
    config.setJournalSizeLimit(KEPT_WAL_BYTES);
    config.setGetGeneratedKeys(false);
    return config;
  }

  private static LogConnection prepared(Path path, LogConnection log) throws SQLException {
    try {
      SchemaSteps.check(log, path);
      useWriteAhead(path, log);
      SchemaSteps.bringUpToDate(log, path);
      return log;
    } catch (SQLException | RuntimeException failure) {
      closeAfter(log, failure);
      throw failure;
    }
  }

  private static void useWriteAhead(Path path, LogConnection log) throws SQLException {
    String mode = log.text("PRAGMA journal_mode = WAL");
    if (!"wal".equals(mode)) {
      throw new BoothLogException(
          "its disk does not allow readers beside the writer: journal mode " + mode,
          path,
          "put the log on a local disk, not on a network share",
          null);
    }
  }

  /**
   * Opens for reading only, beside a writer or alone. On a read-only medium SQLite cannot make the
   * file that readers share; then the log is read as one that nobody writes.
   */
  static LogConnection openForReading(Path path) {
    if (!Files.exists(path)) {
      throw new BoothLogException(
          "there is no such file", path, "correct the log path, or start the monitor once", null);
    }
    try {
      return readable(path, "");
    } catch (SQLException failure) {
      if (!mayBeReadOnlyMedium(failure) || hasUnmergedRows(path)) {
        throw explain(path, failure);
      }
      return readAsImmutable(path, failure);
    }
  }

  private static LogConnection readAsImmutable(Path path, SQLException first) {
    try {
      return readable(path, "?immutable=1");
    } catch (SQLException failure) {
      failure.addSuppressed(first);
      throw explain(path, failure);
    }
  }

  private static LogConnection readable(Path path, String parameters) throws SQLException {
    SQLiteConfig config = new SQLiteConfig();
    config.setReadOnly(true);
    config.setBusyTimeout(COMMAND_BUSY_MILLIS);
    LogConnection log = connect(path, config, parameters);
    try {
      requireReadableSchema(path, SchemaSteps.check(log, path));
      return log;
    } catch (SQLException | RuntimeException failure) {
      closeAfter(log, failure);
      throw failure;
    }
  }

  private static void requireReadableSchema(Path path, int version) {
    if (version < SchemaSteps.newest()) {
      throw new BoothLogException(
          "was written by an older version: its schema is "
              + version
              + ", this program reads "
              + SchemaSteps.newest(),
          path,
          "start the monitor on it once, which brings it up to date",
          null);
    }
  }

  private static boolean mayBeReadOnlyMedium(SQLException failure) {
    int code = SqliteCodes.primary(failure);
    return code == SqliteCodes.CANTOPEN || code == SqliteCodes.READONLY;
  }

  /** Rows that are still in the write-ahead file only would be missed by an immutable reader. */
  private static boolean hasUnmergedRows(Path path) {
    Path writeAhead = path.resolveSibling(path.getFileName() + "-wal");
    try {
      return Files.exists(writeAhead) && Files.size(writeAhead) > 0;
    } catch (IOException unknown) {
      return true;
    }
  }

  private static LogConnection connect(Path path, SQLiteConfig config, String parameters)
      throws SQLException {
    // As a URI, so that no character of the path is taken for a parameter.
    String uri = path.toAbsolutePath().toUri().getRawPath();
    return new LogConnection(config.createConnection("jdbc:sqlite:file:" + uri + parameters));
  }

  private static void closeAfter(LogConnection log, Exception failure) {
    try {
      log.close();
    } catch (SQLException alsoFailed) {
      failure.addSuppressed(alsoFailed);
    }
  }

  /** Makes the folder of a log if only that is missing. */
  static void prepareFolder(Path path) {
    Path folder = path.toAbsolutePath().getParent();
    if (folder == null || Files.isDirectory(path)) {
      throw new BoothLogException(
          "is a folder", path, "name a file in it, such as " + BoothLog.FILE_NAME, null);
    }
    if (Files.isDirectory(folder)) {
      return;
    }
    if (Files.exists(folder)) {
      throw new BoothLogException(
          "lies below " + folder + ", which is a file and not a folder",
          path,
          "correct the log path in booth.toml",
          null);
    }
    if (!Files.isDirectory(folder.getParent())) {
      throw new BoothLogException(
          "neither its folder nor the folder above it exists",
          path,
          "make the folder " + folder + ", or correct the log path in booth.toml",
          null);
    }
    makeFolder(folder, path);
  }

  private static void makeFolder(Path folder, Path path) {
    try {
      Files.createDirectory(folder);
    } catch (IOException failure) {
      if (!Files.isDirectory(folder)) {
        throw new BoothLogException(
            "its folder is missing and cannot be made (" + failure + ")",
            path,
            "make the folder " + folder + " by hand, or correct the log path in booth.toml",
            failure);
      }
    }
  }

  /** Why the log could not be opened, for people. */
  static BoothLogException explain(Path path, SQLException failure) {
    return switch (SqliteCodes.primary(failure)) {
      case SqliteCodes.BUSY, SqliteCodes.LOCKED ->
          new BoothLogException(
              "another process holds it locked",
              path,
              "try again, or end the program that has it open",
              failure);
      case SqliteCodes.NOTADB ->
          new BoothLogException(
              "is not a database file",
              path,
              "move that file away, or correct the log path in booth.toml",
              failure);
      case SqliteCodes.CORRUPT ->
          new BoothLogException(
              "is damaged (" + failure.getMessage() + ")",
              path,
              "move it away with the files beside it and keep it: a new log is begun, and"
                  + " sqlite3's .recover reads the old one",
              failure);
      case SqliteCodes.FULL ->
          new BoothLogException("the disk is full", path, "make room on that disk", failure);
      case SqliteCodes.READONLY, SqliteCodes.CANTOPEN ->
          new BoothLogException(
              "cannot be opened here (" + failure.getMessage() + ")",
              path,
              "check the rights of the file and its folder and that the disk is not read-only; a"
                  + " copy of the file and its -wal file in another folder can be read",
              failure);
      default ->
          new BoothLogException(
              "cannot be used (" + failure.getMessage() + ")",
              path,
              "check the disk it is on",
              failure);
    };
  }
}
