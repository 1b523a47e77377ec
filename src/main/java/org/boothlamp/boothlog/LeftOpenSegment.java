package org.boothlamp.boothlog;

import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import org.boothlamp.monitor.EventKind;
import org.boothlamp.monitor.SegmentEnd;

/**
 * A segment that was running when the power went. Writing it closes it with the figures of its last
 * save. Immutable.
 *
 * @param id row number of the segment
 * @param boot boot number under which it began
 * @param lastSaved the end of what was saved
 */
record LeftOpenSegment(long id, long boot, Moment lastSaved) implements LogRow {

  private static final String SELECT =
      "SELECT id, boot, start_wall_ms, start_mono_ns, start_s, length_s FROM segment"
          + " WHERE end_word IS NULL ORDER BY id";

  /** All of them; to be asked before this start writes its own. */
  static List<LeftOpenSegment> in(LogConnection log) throws SQLException {
    List<LeftOpenSegment> leftOpen = new ArrayList<>();
    try (Columns row = log.bind(SELECT).rows()) {
      while (row.next()) {
        leftOpen.add(
            new LeftOpenSegment(
                row.whole(),
                row.whole(),
                new Moment(row.whole(), row.whole(), row.real()).plus(row.real())));
      }
    }
    return leftOpen;
  }

  /** The event that tells of it, at the end of what was saved. */
  EventRow event(long eventId) {
    return new EventRow(
        eventId,
        boot,
        EventKind.POWER_LOSS,
        lastSaved,
        0,
        1,
        "segment " + id + " has the figures of its last save");
  }

  @Override
  public void write(LogConnection log) throws SQLException {
    log.bind("UPDATE segment SET end_word = ? WHERE id = ? AND end_word IS NULL")
        .text(SegmentEnd.POWER_LOSS.word())
        .whole(id)
        .run();
  }
}
