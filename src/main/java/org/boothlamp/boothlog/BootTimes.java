package org.boothlamp.boothlog;

import java.sql.SQLException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * What is known of when each start of the monitor was. Starts are numbered in order: one whose
 * clock was never set was after all that is known of the timed start before it, and before the one
 * after. Immutable once read.
 */
final class BootTimes {

  private static final String BOOTS =
      "SELECT id, booth, started_wall_ms, clock_trusted FROM boot ORDER BY id";
  private static final String LAST_EVENT = "SELECT max(start_wall_ms) FROM event WHERE boot = ?";

  private record Boot(long id, String booth, long startedWallMillis, boolean timed) {}

  private final LogConnection log;
  private final List<Boot> boots = new ArrayList<>();

  private BootTimes(LogConnection log) {
    this.log = log;
  }

  static BootTimes in(LogConnection log) throws SQLException {
    BootTimes times = new BootTimes(log);
    try (Columns row = log.bind(BOOTS).rows()) {
      while (row.next()) {
        times.boots.add(new Boot(row.whole(), row.text(), row.whole(), row.flag()));
      }
    }
    return times;
  }

  /** Booth of each start. */
  Map<Long, String> booths() {
    Map<Long, String> booths = new HashMap<>();
    boots.forEach(boot -> booths.put(boot.id, boot.booth));
    return booths;
  }

  /** True if there is a start whose clock was never set. */
  boolean hasUntimed() {
    return boots.stream().anyMatch(boot -> !boot.timed);
  }

  /** Starts whose clock was never set and that may have been in the span, in order. */
  List<Long> untimedIn(long fromWallMillis, long untilWallMillis) throws SQLException {
    List<Long> untimed = new ArrayList<>();
    for (Boot boot : boots) {
      if (!boot.timed && mayBeIn(boot, fromWallMillis, untilWallMillis)) {
        untimed.add(boot.id);
      }
    }
    return untimed;
  }

  private boolean mayBeIn(Boot boot, long from, long until) throws SQLException {
    Boot before = null;
    Boot after = null;
    for (Boot other : boots) {
      if (other.timed && other.booth.equals(boot.booth)) {
        before = other.id < boot.id ? other : before;
        after = after == null && other.id > boot.id ? other : after;
      }
    }
    if (before == null && after == null) {
      // In a booth whose clock was never set at all, its own word is all there is.
      return boot.startedWallMillis >= from && boot.startedWallMillis < until;
    }
    return (before == null || lastKnownMillis(before) < until)
        && (after == null || after.startedWallMillis >= from);
  }

  private long lastKnownMillis(Boot boot) throws SQLException {
    try (Columns row = log.bind(LAST_EVENT).whole(boot.id).rows()) {
      row.next();
      return Math.max(boot.startedWallMillis, row.whole());
    }
  }
}
