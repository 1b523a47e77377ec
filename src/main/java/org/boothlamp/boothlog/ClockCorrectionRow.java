package org.boothlamp.boothlog;

import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;

/**
 * Moves the times of day of this start's rows that are in the file to where the clock is right, and
 * keeps by how much. So it does for earlier starts since the machine was switched on whose clock
 * was not known either: they have the same monotonic clock. Immutable.
 *
 * @param machineBoot the kernel's boot id, or null where there is none
 * @param monotonicNanos when the clock was set
 * @param oldBaseMillis time of day at which the monotonic clock stood at 0, as it was taken so far
 * @param newBaseMillis the same as it is
 * @param trusted true if that is now known
 */
record ClockCorrectionRow(
    String machineBoot,
    long monotonicNanos,
    long oldBaseMillis,
    long newBaseMillis,
    boolean trusted)
    implements LogRow {

  private static final String BOOTS =
      "SELECT id, started_wall_ms - started_mono_ns / 1000000 FROM boot"
          + " WHERE id = ? OR (machine_boot = ? AND clock_trusted = 0)";
  private static final String KEEP =
      "INSERT INTO clock_correction"
          + " (boot, corrected_mono_ns, from_wall_ms, to_wall_ms, offset_ms, trusted)"
          + " VALUES (?, ?, ?, ?, ?, ?) ON CONFLICT (boot, corrected_mono_ns) DO NOTHING";

  /** A start and the time of day at its monotonic zero, as its rows have it. */
  private record Boot(long id, long baseMillis) {}

  @Override
  public void write(LogConnection log, LogStart start) throws SQLException {
    for (Boot boot : boots(log, start)) {
      // Rows of this start may have been written with the new base already, just before.
      boolean own = boot.id == start.boot();
      keep(log, boot.id, own ? oldBaseMillis : boot.baseMillis);
      CorrectedTimes.move(log, boot.id, newBaseMillis, trusted);
    }
    CorrectedTimes.moveSignIns(log, machineBoot, newBaseMillis);
  }

  private List<Boot> boots(LogConnection log, LogStart start) throws SQLException {
    List<Boot> boots = new ArrayList<>();
    try (Columns row = log.bind(BOOTS).whole(start.boot()).text(machineBoot).rows()) {
      while (row.next()) {
        boots.add(new Boot(row.whole(), row.whole()));
      }
    }
    return boots;
  }

  private void keep(LogConnection log, long boot, long baseMillis) throws SQLException {
    if (baseMillis == newBaseMillis && !trusted) {
      return;
    }
    long sinceZeroMillis = monotonicNanos / 1_000_000;
    log.bind(KEEP)
        .whole(boot)
        .whole(monotonicNanos)
        .whole(baseMillis + sinceZeroMillis)
        .whole(newBaseMillis + sinceZeroMillis)
        .whole(newBaseMillis - baseMillis)
        .flag(trusted)
        .run();
  }
}
