package org.boothlamp.boothlog;

import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;

/**
 * Rows that belong to segments, read beside them in the same order: one pass over the table however
 * many segments there are. Each row begins with its segment's number.
 */
final class SegmentChildren<T> implements AutoCloseable {

  /** Makes a record of the columns after the segment's number. */
  @FunctionalInterface
  interface Reading<T> {
    T of(Columns row) throws SQLException;
  }

  private final Columns row;
  private final Reading<T> reading;
  private boolean waiting;
  private long segmentId;

  SegmentChildren(Columns row, Reading<T> reading) throws SQLException {
    this.row = row;
    this.reading = reading;
    advance();
  }

  private void advance() throws SQLException {
    waiting = row.next();
    if (waiting) {
      segmentId = row.whole();
    }
  }

  /** The rows of the next segment in order. */
  List<T> of(long id) throws SQLException {
    if (!waiting || segmentId != id) {
      return List.of();
    }
    List<T> children = new ArrayList<>();
    while (waiting && segmentId == id) {
      children.add(reading.of(row));
      advance();
    }
    return children;
  }

  @Override
  public void close() throws SQLException {
    row.close();
  }
}
