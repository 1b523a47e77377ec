package org.boothlamp.boothlog;

import java.sql.SQLException;
import org.boothlamp.report.ExcursionRecord;

/**
 * A spell of a segment outside a window. Immutable.
 *
 * @param segmentId which segment of this start, from 1
 * @param number place among its excursions, from 0
 * @param excursion the spell
 */
record ExcursionRow(long segmentId, int number, ExcursionRecord excursion) implements LogRow {

  private static final String INSERT =
      "INSERT INTO excursion (segment_id, number, quantity, side, start_s, length_s, worst)"
          + " VALUES (?, ?, ?, ?, ?, ?, ?) ON CONFLICT (segment_id, number) DO NOTHING";

  @Override
  public void write(LogConnection log, LogStart start) throws SQLException {
    log.bind(INSERT)
        .whole(start.segment(segmentId))
        .whole(number)
        .text(excursion.quantity().key())
        .text(excursion.side().word())
        .real(excursion.startSeconds())
        .real(excursion.lengthSeconds())
        .real(excursion.worst())
        .run();
  }
}
