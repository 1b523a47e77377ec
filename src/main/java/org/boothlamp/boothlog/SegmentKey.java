package org.boothlamp.boothlog;

import java.sql.SQLException;
import java.util.HashMap;
import java.util.Map;

/**
 * What names a segment outside the log: others that saw it begin know both as well, whatever was
 * found out since of the time of day. Immutable.
 *
 * @param machineBoot the kernel's boot id, or null where there is none
 * @param startMonotonicNanos its start on the monotonic clock
 * @param running true if it has no end yet
 */
public record SegmentKey(String machineBoot, long startMonotonicNanos, boolean running) {

  private static final String SELECT =
      "SELECT s.id, b.machine_boot, s.start_mono_ns, s.end_word IS NULL"
          + " FROM segment s LEFT JOIN boot b ON b.id = s.boot";

  static SegmentKey read(LogConnection log, long segmentId) throws SQLException {
    Map<Long, SegmentKey> found = new HashMap<>();
    try (Columns row = log.bind(SELECT + " WHERE s.id = ?").whole(segmentId).rows()) {
      take(row, found);
    }
    return found.get(segmentId);
  }

  static Map<Long, SegmentKey> readAll(LogConnection log, long fromWallMillis, long untilWallMillis)
      throws SQLException {
    Map<Long, SegmentKey> keys = new HashMap<>();
    String inSpan =
        SELECT + " WHERE s.start_wall_ms >= ? AND s.start_wall_ms < ? OR b.clock_trusted = 0";
    try (Columns row = log.bind(inSpan).whole(fromWallMillis).whole(untilWallMillis).rows()) {
      take(row, keys);
    }
    return keys;
  }

  private static void take(Columns row, Map<Long, SegmentKey> into) throws SQLException {
    while (row.next()) {
      into.put(row.whole(), new SegmentKey(row.text(), row.whole(), row.flag()));
    }
  }
}
