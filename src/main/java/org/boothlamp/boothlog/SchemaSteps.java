package org.boothlamp.boothlog;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.sql.SQLException;
import java.util.List;

/**
 * Brings a log to the layout this program knows, one numbered step after the other, all of them or
 * none. The number of the last step stands in the file's {@code user_version}.
 */
final class SchemaSteps {

  /** Marks the file as a booth log: the letters BLMP. */
  static final int APPLICATION_ID = 0x424C_4D50;

  private static final List<String> STEPS =
      List.of(
          "001-booth-log.sql",
          "002-calibration.sql",
          "003-sync.sql",
          "004-time.sql",
          "005-bead.sql");

  private SchemaSteps() {}

  /** Number of the last step known. */
  static int newest() {
    return STEPS.size();
  }

  /** Takes the steps that {@code log} has not taken yet. */
  static void bringUpToDate(LogConnection log, Path path) throws SQLException {
    if (check(log, path) == newest()) {
      return;
    }
    log.execute("BEGIN IMMEDIATE");
    try {
      // Another process may have taken them while this one waited for its turn.
      takeStepsAfter(check(log, path), log);
      log.execute("COMMIT");
    } catch (SQLException | RuntimeException failure) {
      undo(log, failure);
      throw failure;
    }
  }

  private static void takeStepsAfter(int version, LogConnection log) throws SQLException {
    for (String step : STEPS.subList(version, newest())) {
      log.execute(script("schema/" + step));
    }
    log.execute("PRAGMA application_id = " + APPLICATION_ID);
    log.execute("PRAGMA user_version = " + newest());
  }

  private static void undo(LogConnection log, Exception failure) {
    try {
      log.execute("ROLLBACK");
    } catch (SQLException alsoFailed) {
      failure.addSuppressed(alsoFailed);
    }
  }

  /** The version of a log, or an exception if this program must leave the file alone. */
  static int check(LogConnection log, Path path) throws SQLException {
    long version = log.number("PRAGMA user_version");
    boolean ours = log.number("PRAGMA application_id") == APPLICATION_ID;
    boolean empty = log.number("SELECT count(*) FROM sqlite_schema") == 0;
    if (!ours && !(empty && version == 0)) {
      throw new BoothLogException(
          "is a database of another program",
          path,
          "move that file away, or correct the log path in booth.toml",
          null);
    }
    if (version > newest()) {
      throw new BoothLogException(
          "was written by a newer version: its schema is "
              + version
              + ", this program knows "
              + newest(),
          path,
          "install the newer version of this program",
          null);
    }
    return (int) version;
  }

  /** A script of the program, by its path beside this class. */
  static String script(String path) {
    try (InputStream text = SchemaSteps.class.getResourceAsStream(path)) {
      if (text == null) {
        throw new IllegalStateException("script is missing in the program: path=" + path);
      }
      return new String(text.readAllBytes(), StandardCharsets.UTF_8);
    } catch (IOException unreadable) {
      throw new UncheckedIOException("script cannot be read: path=" + path, unreadable);
    }
  }
}
