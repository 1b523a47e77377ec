package org.boothlamp.boothlog;

import java.sql.SQLException;
import java.util.List;
import org.boothlamp.report.EnteredBead;
import org.boothlamp.report.EnteredBy;
import org.boothlamp.report.ReferenceWeld;
import org.boothlamp.report.RunNotes;

/** What people said of each run, read beside the runs in the same order. Confined to one thread. */
final class RunNotesReading implements AutoCloseable {

  private final SegmentChildren<EnteredBead> beads;
  private final SegmentChildren<Mark> marks;

  private record Mark(boolean marked, ReferenceWeld reference) {}

  /**
   * Takes rows that begin with the number of their segment, the oldest of a segment first.
   *
   * @param beads length, time, role, note
   * @param marks whether it is marked or the mark taken back, time, role, words
   */
  RunNotesReading(Columns beads, Columns marks) throws SQLException {
    this.beads = new SegmentChildren<>(beads, RunNotesReading::bead);
    this.marks = new SegmentChildren<>(marks, RunNotesReading::mark);
  }

  private static EnteredBead bead(Columns row) throws SQLException {
    return new EnteredBead(row.real(), row.whole(), EnteredBy.ofWord(row.text()), row.text());
  }

  private static Mark mark(Columns row) throws SQLException {
    return new Mark(
        row.flag(), new ReferenceWeld(row.whole(), EnteredBy.ofWord(row.text()), row.text()));
  }

  /** What counts of the next segment in order: what was said last. */
  RunNotes of(long id) throws SQLException {
    EnteredBead bead = last(beads.of(id));
    Mark mark = last(marks.of(id));
    ReferenceWeld reference = mark != null && mark.marked() ? mark.reference() : null;
    return bead == null && reference == null ? RunNotes.NONE : new RunNotes(bead, reference);
  }

  private static <T> T last(List<T> rows) {
    return rows.isEmpty() ? null : rows.get(rows.size() - 1);
  }

  @Override
  public void close() throws SQLException {
    try {
      beads.close();
    } finally {
      marks.close();
    }
  }
}
