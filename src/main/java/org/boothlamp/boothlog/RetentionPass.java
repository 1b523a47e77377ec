package org.boothlamp.boothlog;

import java.io.IOException;
import java.sql.SQLException;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;

/**
 * Deletes once what is too old on a day, some rows a step. A row that sync has not sent is kept and
 * counted. Confined to one thread.
 */
final class RetentionPass {

  /** Few enough that a step takes some milliseconds, traces of long runs included. */
  private static final int MOST_AT_ONCE = 20;

  /** One kind of rows, with what was done. */
  private static final class Part {
    private final AgedRows rows;
    private final long beforeWallMillis;
    private final SentRows.Unsent unsent;
    private AgedRows.Row latest = AgedRows.Row.BEFORE_ALL;
    private long deleted;
    private long kept;

    Part(AgedRows rows, long beforeWallMillis, SentRows.Unsent unsent) {
      this.rows = rows;
      this.beforeWallMillis = beforeWallMillis;
      this.unsent = unsent;
    }
  }

  private final List<Part> parts = new ArrayList<>();
  private int current;

  /**
   * A pass that has deleted nothing yet.
   *
   * @param today on the booth's local clock; does not count as a day of a row's age
   * @throws IOException if it cannot be told what has been sent
   */
  RetentionPass(RetentionRule rule, SentRows sent, LocalDate today, ZoneId zone)
      throws IOException {
    add(AgedRows.RUNS, rule.runsDays(), sent, today, zone);
    add(AgedRows.TOUCHES, rule.runsDays(), sent, today, zone);
    add(AgedRows.TRACES, rule.tracesDays(), sent, today, zone);
    add(AgedRows.EVENTS, rule.eventsDays(), sent, today, zone);
    add(AgedRows.SIGN_INS, rule.signInsDays(), sent, today, zone);
  }

  private void add(AgedRows rows, int days, SentRows sent, LocalDate today, ZoneId zone)
      throws IOException {
    if (days > 0) {
      long before = today.minusDays(days).atStartOfDay(zone).toInstant().toEpochMilli();
      parts.add(new Part(rows, before, sent.of(rows.table())));
    }
  }

  /** Deletes some rows in one transaction; false when there are no more. */
  boolean step(LogConnection log) throws SQLException {
    if (current == parts.size()) {
      return false;
    }
    Part part = parts.get(current);
    List<AgedRows.Row> found =
        part.rows.next(log, part.beforeWallMillis, part.latest, MOST_AT_ONCE);
    if (found.isEmpty()) {
      current++;
    } else {
      delete(log, part, found);
      part.latest = found.get(found.size() - 1);
    }
    return current < parts.size();
  }

  private static void delete(LogConnection log, Part part, List<AgedRows.Row> found)
      throws SQLException {
    List<AgedRows.Row> sent = found.stream().filter(row -> !part.unsent.has(row.id())).toList();
    if (!sent.isEmpty()) {
      deleteAtOnce(log, part.rows, sent);
    }
    part.deleted += sent.size();
    part.kept += found.size() - sent.size();
  }

  private static void deleteAtOnce(LogConnection log, AgedRows rows, List<AgedRows.Row> found)
      throws SQLException {
    log.execute("BEGIN IMMEDIATE");
    try {
      for (AgedRows.Row row : found) {
        rows.delete(log, row.id());
      }
      log.execute("COMMIT");
    } catch (SQLException failure) {
      undo(log, failure);
      throw failure;
    }
  }

  private static void undo(LogConnection log, SQLException failure) {
    try {
      log.execute("ROLLBACK");
      log.forgetStatements();
    } catch (SQLException alsoFailed) {
      failure.addSuppressed(alsoFailed);
    }
  }

  /** Rows that are gone. */
  long deleted() {
    return parts.stream().mapToLong(part -> part.deleted).sum();
  }

  /** Rows that are too old and still there. */
  long kept() {
    return parts.stream().mapToLong(part -> part.kept).sum();
  }

  /** What was done, for people: "12 runs, 40 traces; not sent yet and kept: 3 events". */
  String words() {
    List<String> deleted = new ArrayList<>();
    List<String> kept = new ArrayList<>();
    for (Part part : parts) {
      if (part.deleted > 0) {
        deleted.add(part.rows.counted(part.deleted));
      }
      if (part.kept > 0) {
        kept.add(part.rows.counted(part.kept));
      }
    }
    return (deleted.isEmpty() ? "none" : String.join(", ", deleted))
        + (kept.isEmpty() ? "" : "; not sent yet and kept: " + String.join(", ", kept));
  }
}
