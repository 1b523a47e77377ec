package org.boothlamp.boothlog;

import java.sql.SQLException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.boothlamp.report.StartTimes;
import org.boothlamp.report.StartTimes.Start;

/** The starts of monitors that a log holds, and which of them may have been when. */
final class BootTimes {

  private static final String BOOTHS = "SELECT id, booth FROM boot";
  private static final String STARTS =
      "SELECT b.booth, b.id, b.started_wall_ms, b.clock_trusted,"
          + " max(b.started_wall_ms, ifnull("
          + "(SELECT max(start_wall_ms) FROM event WHERE boot = b.id), 0))"
          + " FROM boot b ORDER BY b.id";

  private final LogConnection log;

  BootTimes(LogConnection log) {
    this.log = log;
  }

  /** Booth of each start. */
  Map<Long, String> booths() throws SQLException {
    Map<Long, String> booths = new HashMap<>();
    try (Columns row = log.bind(BOOTHS).rows()) {
      while (row.next()) {
        booths.put(row.whole(), row.text());
      }
    }
    return booths;
  }

  /** True if there is a start whose clock was never set. */
  boolean hasUntimed() throws SQLException {
    return log.number("SELECT EXISTS (SELECT 1 FROM boot WHERE clock_trusted = 0)") > 0;
  }

  /** Starts whose clock was never set and that may have been in the span, in order. */
  List<Long> untimedIn(long fromWallMillis, long untilWallMillis) throws SQLException {
    return hasUntimed()
        ? new StartTimes(starts())
            .untimedIn(fromWallMillis, untilWallMillis).stream().map(Start::number).toList()
        : List.of();
  }

  private List<Start> starts() throws SQLException {
    List<Start> starts = new ArrayList<>();
    try (Columns row = log.bind(STARTS).rows()) {
      while (row.next()) {
        starts.add(new Start(row.text(), row.whole(), row.whole(), row.flag(), row.whole()));
      }
    }
    return starts;
  }
}
