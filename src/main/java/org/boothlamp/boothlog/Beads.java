package org.boothlamp.boothlog;

import java.nio.file.Path;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import org.boothlamp.monitor.WallClock;
import org.boothlamp.report.BeadRefusedException;
import org.boothlamp.report.BeadRule;
import org.boothlamp.report.EnteredBy;
import org.boothlamp.report.RunRecord;

/**
 * What people say of runs after the weld: the length of a bead, the mark of a reference weld. Each
 * call is a transaction of its own, beside a monitor that runs or alone; it waits up to 5 s for
 * other writers and is on the disk when it returns. Safe to share.
 */
public final class Beads {

  /** Stands for the run that ended last. */
  public static final long LATEST = 0;

  private static final String INSERT_BEAD =
      "INSERT INTO bead (segment_id, wall_ms, entered_by, length_mm, note) VALUES (?, ?, ?, ?, ?)";
  private static final String INSERT_REFERENCE =
      "INSERT INTO reference_weld (segment_id, wall_ms, entered_by, marked, words)"
          + " VALUES (?, ?, ?, ?, ?)";
  private static final String LATEST_ID =
      "SELECT coalesce(max(id), 0) FROM segment WHERE end_word IS NOT NULL";
  private static final String NEAREST =
      "SELECT id FROM (SELECT id FROM segment WHERE id < ?1 ORDER BY id DESC LIMIT 2)"
          + " UNION ALL SELECT id FROM (SELECT id FROM segment WHERE id > ?1 ORDER BY id LIMIT 2)"
          + " ORDER BY id";

  @FunctionalInterface
  private interface Work {
    void in(LogConnection log, RunRecord run) throws SQLException;
  }

  private final Path path;
  private final WallClock clock;

  /**
   * Beads of a log; opens nothing yet.
   *
   * @param clock time of day of what is entered
   */
  public Beads(Path path, WallClock clock) {
    this.path = path;
    this.clock = clock;
  }

  /**
   * Enters the length of a run's bead; the latest counts.
   *
   * @param run row number of its segment, or {@link #LATEST}
   * @param lengthMillimetres measured along the bead
   * @param note words of whoever measured it, at most 200 characters; may be empty
   * @return the run with its bead, for the figures that follow from it
   * @throws BeadRefusedException if there is no such run, it has not ended, or its bead cannot be
   *     as long, or the note is too long
   * @throws BoothLogException if the log cannot be opened or written
   */
  public RunRecord enter(long run, double lengthMillimetres, String note, EnteredBy by) {
    String line = BeadRule.note(note);
    return write(
        run,
        (log, found) -> {
          BeadRule.check(found, lengthMillimetres);
          log.bind(INSERT_BEAD)
              .whole(found.id())
              .whole(clock.epochMillis())
              .text(by.word())
              .real(lengthMillimetres)
              .text(line)
              .run();
        });
  }

  /**
   * Marks a run as a reference weld; the latest words count.
   *
   * @param words the instructor's words, at most 200 characters; may be empty
   * @return the run with its mark
   * @throws BeadRefusedException if there is no such run, or the words are too long
   * @throws BoothLogException if the log cannot be opened or written
   */
  public RunRecord markReference(long run, String words, EnteredBy by) {
    String line = BeadRule.note(words);
    return write(run, (log, found) -> mark(log, found, 1, line, by));
  }

  /**
   * Takes the mark of a reference weld back.
   *
   * @return the run without its mark
   * @throws BeadRefusedException if there is no such run, or it bears no mark
   * @throws BoothLogException if the log cannot be opened or written
   */
  public RunRecord withdrawReference(long run, EnteredBy by) {
    return write(
        run,
        (log, found) -> {
          if (!found.notes().isReference()) {
            throw BeadRefusedException.notReference(found.id());
          }
          mark(log, found, 0, "", by);
        });
  }

  private void mark(LogConnection log, RunRecord run, int marked, String words, EnteredBy by)
      throws SQLException {
    log.bind(INSERT_REFERENCE)
        .whole(run.id())
        .whole(clock.epochMillis())
        .text(by.word())
        .whole(marked)
        .text(words)
        .run();
  }

  private RunRecord write(long run, Work work) {
    requireLog();
    try (LogConnection log = LogFile.openForWriting(path, LogFile.COMMAND_BUSY_MILLIS)) {
      log.execute("BEGIN IMMEDIATE");
      try {
        RunRecord found = find(log, run);
        work.in(log, found);
        RunRecord after = find(log, found.id());
        log.execute("COMMIT");
        return after;
      } catch (SQLException | RuntimeException failure) {
        undo(log, failure);
        throw failure;
      }
    } catch (SQLException failure) {
      throw LogFile.explain(path, failure);
    }
  }

  /** A log is not made only to learn that it has no run. */
  private void requireLog() {
    try {
      LogFile.openForReading(path).close();
    } catch (SQLException failure) {
      throw LogFile.explain(path, failure);
    }
  }

  private static void undo(LogConnection log, Exception failure) {
    try {
      log.execute("ROLLBACK");
    } catch (SQLException alsoFailed) {
      failure.addSuppressed(alsoFailed);
    }
  }

  /**
   * A run with what was said of it last.
   *
   * @param run row number of its segment, or {@link #LATEST}
   * @throws BeadRefusedException if there is no such run
   */
  static RunRecord find(LogConnection log, long run) throws SQLException {
    long id = run == LATEST ? log.number(LATEST_ID) : run;
    RunRecord found = ShiftReading.run(log, id);
    if (found == null) {
      throw BeadRefusedException.unknown(id, nearest(log, id));
    }
    return found;
  }

  private static List<Long> nearest(LogConnection log, long id) throws SQLException {
    List<Long> nearest = new ArrayList<>();
    try (Columns row = log.bind(NEAREST).whole(id).rows()) {
      while (row.next()) {
        nearest.add(row.whole());
      }
    }
    return nearest;
  }
}
