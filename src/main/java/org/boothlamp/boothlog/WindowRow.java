package org.boothlamp.boothlog;

import java.sql.SQLException;
import org.boothlamp.procedure.Window;

/**
 * A limit that a segment is judged by. Immutable.
 *
 * @param segmentId which segment of this start, from 1
 * @param number place among its windows, from 0
 * @param window the limit
 */
record WindowRow(long segmentId, int number, Window window) implements LogRow {

  private static final String INSERT =
      "INSERT INTO segment_window (segment_id, number, quantity, low, high)"
          + " VALUES (?, ?, ?, ?, ?) ON CONFLICT (segment_id, number) DO NOTHING";

  @Override
  public void write(LogConnection log, LogStart start) throws SQLException {
    log.bind(INSERT)
        .whole(start.segment(segmentId))
        .whole(number)
        .text(window.quantity().key())
        .real(window.low())
        .real(window.high())
        .run();
  }
}
