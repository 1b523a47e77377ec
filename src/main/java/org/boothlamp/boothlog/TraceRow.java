package org.boothlamp.boothlog;

import java.sql.SQLException;

/** Trace points of a segment that follow each other. */
final class TraceRow implements LogRow {

  private static final String INSERT =
      "INSERT INTO trace (segment_id, first_point, points)"
          + " VALUES (?, ?, ?) ON CONFLICT (segment_id, first_point) DO NOTHING";

  private final long segmentId;
  private final int firstPoint;
  private final byte[] points;

  TraceRow(long segmentId, int firstPoint, byte[] points) {
    this.segmentId = segmentId;
    this.firstPoint = firstPoint;
    this.points = points;
  }

  @Override
  public boolean isBulk() {
    return true;
  }

  @Override
  public void write(LogConnection log, LogStart start) throws SQLException {
    log.bind(INSERT).whole(start.segment(segmentId)).whole(firstPoint).bytes(points).run();
  }
}
