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
 * @param eventId which event of this start tells of it
 */
record LeftOpenSegment(long id, long boot, Moment lastSaved, long eventId) implements LogRow {

  private static final String SELECT =
      "SELECT id, boot, start_wall_ms, start_mono_ns, start_s, length_s FROM segment"
          + " WHERE end_word IS NULL AND boot < ? ORDER BY id";

  /** All of them that began under an earlier start. */
  static List<LeftOpenSegment> in(LogConnection log, LogStart start) throws SQLException {
    List<LeftOpenSegment> leftOpen = new ArrayList<>();
    try (Columns row = log.bind(SELECT).whole(start.boot()).rows()) {
      while (row.next()) {
        leftOpen.add(
            new LeftOpenSegment(
                row.whole(),
                row.whole(),
                new Moment(row.whole(), row.whole(), row.real()).plus(row.real()),
                start.nextEvent()));
      }
    }
    return leftOpen;
  }

  @Override
  public void write(LogConnection log, LogStart start) throws SQLException {
    log.bind("UPDATE segment SET end_word = ? WHERE id = ? AND end_word IS NULL")
        .text(SegmentEnd.POWER_LOSS.word())
        .whole(id)
        .run();
    event().save(log, start.event(eventId), boot, lastSaved.wallMillis());
  }

  /** The event that tells of it, at the end of what was saved. */
  private EventRow event() {
    return new EventRow(
        eventId,
        EventKind.POWER_LOSS,
        lastSaved,
        0,
        1,
        "segment " + id + " has the figures of its last save");
  }
}
