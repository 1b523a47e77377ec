package org.boothlamp.boothlog;

import java.sql.SQLException;
import java.util.ArrayList;
import java.util.Iterator;
import java.util.List;
import org.tinylog.Logger;

/**
 * Rows that wait to be written together, in order. They stay here until a commit has succeeded; a
 * commit that failed is tried again after a pause that doubles from 0.1 s to 2 s. Confined to one
 * thread.
 */
final class LogBatch {

  /** How long a row waits for company: bounds the commits to five a second. */
  private static final long HOLD_NANOS = 200_000_000L;

  private static final long SHORTEST_PAUSE_NANOS = 100_000_000L;
  private static final long LONGEST_PAUSE_NANOS = 2_000_000_000L;

  /** Rows after which no more entries are taken from the queue: some 15 MB, hours of welding. */
  private static final int MOST_ROWS = 10_000;

  private final BoothLog log;
  private final BoothLogCounters counters;
  private final LogClocks clocks;
  private final List<LogRow> rows = new ArrayList<>();
  private long dueNanos;
  private long pauseNanos = SHORTEST_PAUSE_NANOS;
  private Exception failure;

  LogBatch(BoothLog log, LogClocks clocks, BoothLogCounters counters) {
    this.log = log;
    this.clocks = clocks;
    this.counters = counters;
  }

  /** Adds a row behind those that wait. */
  void add(LogRow row) {
    if (rows.isEmpty()) {
      dueNanos = clocks.nano().nanoTime() + HOLD_NANOS;
    }
    rows.add(row);
  }

  /** Adds a row unless the same object waits already: it is then written once, as it is by then. */
  void addOnce(LogRow row) {
    // A row that waits is near the end, except during a stall.
    for (int i = rows.size() - 1; i >= 0; i--) {
      if (rows.get(i) == row) {
        return;
      }
    }
    add(row);
  }

  boolean isEmpty() {
    return rows.isEmpty();
  }

  /** True if memory has been given to it as much as it may have. */
  boolean isFull() {
    return rows.size() >= MOST_ROWS;
  }

  int size() {
    return rows.size();
  }

  /** True if a commit should be tried now. */
  boolean isDue() {
    return !rows.isEmpty() && clocks.nano().nanoTime() - dueNanos >= 0;
  }

  /** What made the latest commit fail, or null if it succeeded. */
  Exception failure() {
    return failure;
  }

  /** Writes all rows in one transaction; if it fails they stay for another try. */
  boolean commit() {
    long begunNanos = clocks.nano().nanoTime();
    try {
      commitOn(log.connection());
    } catch (SQLException | RuntimeException failed) {
      onFailure(failed);
      return false;
    }
    counters.commits++;
    counters.rows += rows.size();
    counters.slowestCommitNanos =
        Math.max(counters.slowestCommitNanos, clocks.nano().nanoTime() - begunNanos);
    rows.clear();
    failure = null;
    pauseNanos = SHORTEST_PAUSE_NANOS;
    return true;
  }

  private void commitOn(LogConnection connection) throws SQLException {
    connection.execute("BEGIN IMMEDIATE");
    try {
      writeRows(connection);
      connection.execute("COMMIT");
    } catch (SQLException | RuntimeException failed) {
      rollBack(connection, failed);
      throw failed;
    }
  }

  private void writeRows(LogConnection connection) throws SQLException {
    for (Iterator<LogRow> waiting = rows.iterator(); waiting.hasNext(); ) {
      LogRow row = waiting.next();
      try {
        row.write(connection);
      } catch (SQLException failed) {
        if (!SqliteCodes.isOfTheRow(failed)) {
          throw failed;
        }
        refuse(waiting, row, failed);
      } catch (RuntimeException failed) {
        refuse(waiting, row, failed);
      }
    }
  }

  /** One row that can never go in must not keep the others out. */
  private void refuse(Iterator<LogRow> waiting, LogRow row, Exception failed) {
    waiting.remove();
    counters.refusedRows++;
    Logger.error(failed, "booth log {}: a row is refused and left out: {}", log.path(), row);
  }

  private void rollBack(LogConnection connection, Exception failed) {
    try {
      connection.execute("ROLLBACK");
    } catch (SQLException alsoFailed) {
      failed.addSuppressed(alsoFailed);
      log.dropConnection(failed);
    }
  }

  private void onFailure(Exception failed) {
    counters.failedCommits++;
    failure = failed;
    if (failed instanceof SQLException known && !SqliteCodes.passesByItself(known)) {
      log.dropConnection(failed);
    }
    dueNanos = clocks.nano().nanoTime() + pauseNanos;
    pauseNanos = Math.min(LONGEST_PAUSE_NANOS, 2 * pauseNanos);
  }
}
