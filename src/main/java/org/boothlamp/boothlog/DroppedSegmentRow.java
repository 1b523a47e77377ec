package org.boothlamp.boothlog;

import java.sql.SQLException;

/**
 * Takes a segment back that was saved while it ran and turned out to be a touch. Immutable.
 *
 * @param segmentId row number of the segment
 */
record DroppedSegmentRow(long segmentId) implements LogRow {

  @Override
  public void write(LogConnection log) throws SQLException {
    log.bind("DELETE FROM segment WHERE id = ?").whole(segmentId).run();
  }
}
