package org.boothlamp.boothlog;

import java.sql.SQLException;

/**
 * Takes a segment back that was saved while it ran and turned out to be a touch. Immutable.
 *
 * @param segmentId which segment of this start, from 1
 */
record DroppedSegmentRow(long segmentId) implements LogRow {

  @Override
  public void write(LogConnection log, LogStart start) throws SQLException {
    log.bind("DELETE FROM segment WHERE id = ?").whole(start.segment(segmentId)).run();
  }
}
