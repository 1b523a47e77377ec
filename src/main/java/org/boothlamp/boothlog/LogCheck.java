package org.boothlamp.boothlog;

import java.sql.SQLException;
import java.util.function.BooleanSupplier;
import org.sqlite.ProgressHandler;

/** Asks SQLite whether a log's pages hang together, for a limited time. */
final class LogCheck {

  /** What was found. */
  enum Result {
    SOUND,
    DAMAGED,
    /** The time was not enough to tell. */
    UNFINISHED
  }

  /** Pages, or steps of SQLite's machine, between two looks at the clock. */
  private static final int STEPS_BETWEEN_LOOKS = 100;

  private LogCheck() {}

  /**
   * Looks at every page.
   *
   * @param isOver asked some hundred times a second; true ends the look without an answer
   */
  static Result run(LogConnection log, BooleanSupplier isOver) throws SQLException {
    ProgressHandler.setHandler(
        log.connection(),
        STEPS_BETWEEN_LOOKS,
        new ProgressHandler() {
          @Override
          protected int progress() {
            return isOver.getAsBoolean() ? 1 : 0;
          }
        });
    try {
      return "ok".equals(log.text("PRAGMA quick_check(1)")) ? Result.SOUND : Result.DAMAGED;
    } catch (SQLException failure) {
      if (SqliteCodes.primary(failure) == SqliteCodes.INTERRUPT) {
        return Result.UNFINISHED;
      }
      if (SqliteCodes.isDamage(failure)) {
        return Result.DAMAGED;
      }
      throw failure;
    } finally {
      ProgressHandler.clearHandler(log.connection());
    }
  }
}
