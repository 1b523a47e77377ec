package org.boothlamp.boothlog;

import java.nio.file.Path;
import java.sql.SQLException;
import org.tinylog.Logger;

/**
 * Looks at a log that is too large to be looked at before the first row is written, beside the
 * writer, on a thread of its own. {@link #foundDamage} may be asked from any thread.
 */
final class BackgroundCheck {

  private volatile boolean damaged;
  private volatile boolean unwanted;

  /** Begins to look. */
  static BackgroundCheck begin(Path path) {
    BackgroundCheck check = new BackgroundCheck();
    Thread thread = new Thread(() -> check.run(path), "boothlog-check");
    thread.setDaemon(true);
    thread.setPriority(Thread.MIN_PRIORITY);
    thread.start();
    return check;
  }

  private void run(Path path) {
    try (LogConnection log = LogFile.openForReading(path)) {
      damaged = LogCheck.run(log, () -> unwanted) == LogCheck.Result.DAMAGED;
    } catch (SQLException | BoothLogException failure) {
      damaged = SqliteCodes.isDamage(failure);
      Logger.warn("booth log {}: could not be looked at: {}", path, failure.getMessage());
    }
  }

  /** True once damage was seen. */
  boolean foundDamage() {
    return damaged;
  }

  /** Ends it soon, whatever it has seen. */
  void end() {
    unwanted = true;
  }
}
