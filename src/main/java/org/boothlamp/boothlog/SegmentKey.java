package org.boothlamp.boothlog;

import java.sql.SQLException;
import java.util.HashMap;
import java.util.Map;

/**
 * What names a segment outside the log: others that saw it begin know both as well. Immutable.
 *
 * @param boot number of the monitor's start
 * @param startWallMillis time of day of its start, ms since the epoch
 * @param running true if it has no end yet
 */
public record SegmentKey(long boot, long startWallMillis, boolean running) {

  private static final String SELECT =
      "SELECT id, boot, start_wall_ms, end_word IS NULL FROM segment";

  static SegmentKey read(LogConnection log, long segmentId) throws SQLException {
    Map<Long, SegmentKey> found = new HashMap<>();
    try (Columns row = log.bind(SELECT + " WHERE id = ?").whole(segmentId).rows()) {
      take(row, found);
    }
    return found.get(segmentId);
  }

  static Map<Long, SegmentKey> readAll(LogConnection log, long fromWallMillis, long untilWallMillis)
      throws SQLException {
    Map<Long, SegmentKey> keys = new HashMap<>();
    String inSpan = SELECT + " WHERE start_wall_ms >= ? AND start_wall_ms < ?";
    try (Columns row = log.bind(inSpan).whole(fromWallMillis).whole(untilWallMillis).rows()) {
      take(row, keys);
    }
    return keys;
  }

  private static void take(Columns row, Map<Long, SegmentKey> into) throws SQLException {
    while (row.next()) {
      into.put(row.whole(), new SegmentKey(row.whole(), row.whole(), row.flag()));
    }
  }
}
