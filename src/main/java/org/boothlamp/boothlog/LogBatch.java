package org.boothlamp.boothlog;

import java.sql.SQLException;
import java.util.ArrayList;
import java.util.Iterator;
import java.util.List;
import java.util.function.Predicate;
import org.boothlamp.monitor.RoomMaker;
import org.tinylog.Logger;

/**
 * Rows that wait to be written together, in order. They stay here until a commit has succeeded; a
 * commit that failed is tried again after a pause that doubles from 0.1 s to 2 s. Confined to one
 * thread.
 *
 * <p>When a row is due: at once if somebody says {@link #hurry}; while rows are {@link #hold held},
 * for an arc burns, after two seconds; else after a fifth of a second, with what came meanwhile.
 */
final class LogBatch {

  /** How long a row waits for company: bounds the commits to five a second. */
  private static final long HOLD_NANOS = 200_000_000L;

  /** How much longer while an arc burns: the next save comes before, and takes it along. */
  private static final long HELD_NANOS = 1_800_000_000L;

  /** What is asked for when the disk is full: a few hundred rows with their traces. */
  private static final long ROOM_BYTES = 1_000_000;

  private static final long SHORTEST_PAUSE_NANOS = 100_000_000L;
  private static final long LONGEST_PAUSE_NANOS = 2_000_000_000L;

  /** Rows after which no more entries are taken from the queue: some 15 MB, hours of welding. */
  static final int MOST_ROWS = 10_000;

  private final BoothLog log;
  private final LogStart start;
  private final BoothLogCounters counters;
  private final LogClocks clocks;
  private final RoomMaker roomMaker;
  private final List<LogRow> rows = new ArrayList<>();
  private long dueNanos;
  private boolean held;
  private boolean hurried;
  private long pauseNanos = SHORTEST_PAUSE_NANOS;
  private Exception failure;

  LogBatch(
      BoothLog log,
      LogStart start,
      LogClocks clocks,
      BoothLogCounters counters,
      RoomMaker roomMaker) {
    this.log = log;
    this.start = start;
    this.clocks = clocks;
    this.counters = counters;
    this.roomMaker = roomMaker;
  }

  /** Adds a row behind those that wait. */
  void add(LogRow row) {
    if (rows.isEmpty()) {
      dueNanos = clocks.nano().nanoTime() + HOLD_NANOS;
    }
    rows.add(row);
  }

  /** Adds rows before those that wait. */
  void addInFront(List<? extends LogRow> first) {
    if (rows.isEmpty()) {
      dueNanos = clocks.nano().nanoTime() + HOLD_NANOS;
    }
    rows.addAll(0, first);
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

  /** From now on rows wait until somebody hurries, or no longer. */
  void hold(boolean whether) {
    held = whether;
  }

  /** What waits is to be written now. */
  void hurry() {
    hurried = true;
  }

  boolean isEmpty() {
    return rows.isEmpty();
  }

  /**
   * True if memory has been given to it as much as it may have. Traces are given up before that,
   * the oldest first: no finished segment is lost while its trace can make room for it.
   */
  boolean isFull() {
    if (rows.size() < MOST_ROWS) {
      return false;
    }
    giveUpTraces();
    return rows.size() >= MOST_ROWS;
  }

  private void giveUpTraces() {
    int toGiveUp = MOST_ROWS / 10;
    for (Iterator<LogRow> waiting = rows.iterator(); waiting.hasNext() && toGiveUp > 0; ) {
      if (waiting.next().isBulk()) {
        waiting.remove();
        counters.givenUpTraceRows++;
        toGiveUp--;
      }
    }
  }

  int size() {
    return rows.size();
  }

  /** True if a commit should be tried now. */
  boolean isDue() {
    if (rows.isEmpty()) {
      hurried = false;
      return false;
    }
    if (failure == null && hurried) {
      return true;
    }
    long lateNanos = clocks.nano().nanoTime() - dueNanos;
    return lateNanos >= (held && failure == null ? HELD_NANOS : 0);
  }

  /** What made the latest commit fail, or null if it succeeded. */
  Exception failure() {
    return failure;
  }

  /** Writes all rows in one transaction; if it fails they stay for another try. */
  boolean commit() {
    long begunNanos = clocks.nano().nanoTime();
    try {
      commitOn(log.connection(), row -> true);
      rows.clear();
    } catch (SQLException | RuntimeException failed) {
      onFailure(failed);
      return false;
    }
    onSuccess(begunNanos);
    return true;
  }

  private void onSuccess(long begunNanos) {
    counters.commits++;
    counters.slowestCommitNanos =
        Math.max(counters.slowestCommitNanos, clocks.nano().nanoTime() - begunNanos);
    failure = null;
    hurried = false;
    pauseNanos = SHORTEST_PAUSE_NANOS;
  }

  private void commitOn(LogConnection connection, Predicate<LogRow> which) throws SQLException {
    connection.execute("BEGIN IMMEDIATE");
    try {
      int written = writeRows(connection, which);
      connection.execute("COMMIT");
      counters.rows += written;
    } catch (SQLException | RuntimeException failed) {
      rollBack(connection, failed);
      connection.forgetStatements();
      throw failed;
    }
  }

  private int writeRows(LogConnection connection, Predicate<LogRow> which) throws SQLException {
    int written = 0;
    for (Iterator<LogRow> waiting = rows.iterator(); waiting.hasNext(); ) {
      LogRow row = waiting.next();
      if (!which.test(row)) {
        continue;
      }
      try {
        row.write(connection, start);
        written++;
      } catch (SQLException failed) {
        if (!SqliteCodes.isOfTheRow(failed)) {
          throw failed;
        }
        connection.forgetStatements();
        refuse(waiting, row, failed);
      } catch (RuntimeException failed) {
        refuse(waiting, row, failed);
      }
    }
    return written;
  }

  /** One row that can never go in must not keep the others out. */
  private void refuse(Iterator<LogRow> waiting, LogRow row, Exception failed) {
    waiting.remove();
    counters.refusedRows++;
    Logger.error(failed, "booth log {}: a row is refused and left out: {}", log.path(), row);
  }

  private static void rollBack(LogConnection connection, Exception failed) {
    try {
      connection.execute("ROLLBACK");
    } catch (SQLException alsoFailed) {
      // A full disk has ended the transaction already. If it has not, the next BEGIN says so.
      failed.addSuppressed(alsoFailed);
    }
  }

  private void onFailure(Exception failed) {
    counters.failedCommits++;
    failure = failed;
    if (failed instanceof SQLException known && !SqliteCodes.passesByItself(known)) {
      log.dropConnection(failed);
    }
    boolean room =
        SqliteCodes.isFull(failed) && (writeWithoutTraces() | roomMaker.makeRoom(ROOM_BYTES));
    pauseNanos = room ? SHORTEST_PAUSE_NANOS : pauseNanos;
    dueNanos = clocks.nano().nanoTime() + pauseNanos;
    pauseNanos = Math.min(LONGEST_PAUSE_NANOS, 2 * pauseNanos);
  }

  /** On a full disk a small transaction may still fit where a large one does not. */
  private boolean writeWithoutTraces() {
    if (rows.stream().allMatch(LogRow::isBulk)) {
      return false;
    }
    try {
      commitOn(log.connection(), row -> !row.isBulk());
      rows.removeIf(row -> !row.isBulk());
      counters.commits++;
      return true;
    } catch (SQLException | RuntimeException failed) {
      failure.addSuppressed(failed);
      return false;
    }
  }
}
