package org.boothlamp.boothlog;

import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;

/**
 * Times of day of rows, computed again from their monotonic times: to do it twice does no harm.
 * Stateless.
 */
final class CorrectedTimes {

  private static final List<String> BY_BOOT = List.of("segment", "touch", "event");

  private static final String LATEST =
      "SELECT c.boot, c.to_wall_ms - c.corrected_mono_ns / 1000000, c.trusted, b.machine_boot"
          + " FROM clock_correction c LEFT JOIN boot b ON b.id = c.boot"
          + " WHERE c.corrected_mono_ns ="
          + " (SELECT max(corrected_mono_ns) FROM clock_correction WHERE boot = c.boot)"
          + " ORDER BY c.corrected_mono_ns";

  private record Clock(long boot, long baseMillis, boolean trusted, String machineBoot) {}

  private CorrectedTimes() {}

  /** Gives all rows of a start their times of day by the one at its monotonic zero. */
  static void move(LogConnection log, long boot, long baseMillis, boolean trusted)
      throws SQLException {
    for (String table : BY_BOOT) {
      log.bind(
              "UPDATE " + table + " SET start_wall_ms = ? + start_mono_ns / 1000000 WHERE boot = ?")
          .whole(baseMillis)
          .whole(boot)
          .run();
    }
    log.bind(
            "UPDATE boot SET started_wall_ms = ? + started_mono_ns / 1000000, clock_trusted = ?"
                + " WHERE id = ?")
        .whole(baseMillis)
        .flag(trusted)
        .whole(boot)
        .run();
  }

  /** The same for sign-ins since the machine was switched on. */
  static void moveSignIns(LogConnection log, String machineBoot, long baseMillis)
      throws SQLException {
    log.bind(
            "UPDATE sign_in SET wall_ms = ? + mono_ns / 1000000"
                + " WHERE machine_boot = ? AND mono_ns IS NOT NULL")
        .whole(baseMillis)
        .text(machineBoot)
        .run();
  }

  /** Puts a collected log's rows right, whether they came before their correction or after. */
  static void followCollected(LogConnection log) throws SQLException {
    for (Clock clock : latest(log)) {
      move(log, clock.boot, clock.baseMillis, clock.trusted);
      moveSignIns(log, clock.machineBoot, clock.baseMillis);
    }
  }

  private static List<Clock> latest(LogConnection log) throws SQLException {
    List<Clock> clocks = new ArrayList<>();
    try (Columns row = log.bind(LATEST).rows()) {
      while (row.next()) {
        clocks.add(new Clock(row.whole(), row.whole(), row.flag(), row.text()));
      }
    }
    return clocks;
  }
}
