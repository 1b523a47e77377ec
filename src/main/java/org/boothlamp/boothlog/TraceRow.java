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
  public void write(LogConnection log) throws SQLException {
    log.bind(INSERT).whole(segmentId).whole(firstPoint).bytes(points).run();
  }
}
