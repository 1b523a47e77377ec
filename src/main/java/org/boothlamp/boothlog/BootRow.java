package org.boothlamp.boothlog;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.SQLException;

/**
 * One start of the monitor. Immutable.
 *
 * @param booth booth id
 * @param wallMillis time of day, ms since the epoch
 * @param monotonicNanos the same moment on the monotonic clock
 * @param machineBoot the kernel's boot id, or null where there is none
 */
record BootRow(String booth, long wallMillis, long monotonicNanos, String machineBoot)
    implements LogRow {

  private static final Path MACHINE_BOOT = Path.of("/proc/sys/kernel/random/boot_id");

  private static final String INSERT =
      "INSERT INTO boot (id, booth, started_wall_ms, started_mono_ns, machine_boot, clock_trusted)"
          + " VALUES (?, ?, ?, ?, ?, ?) ON CONFLICT (id) DO NOTHING";

  /** The machine's own boot id, or null where the kernel does not tell. */
  static String machineBootNow() {
    try {
      return Files.readString(MACHINE_BOOT).strip();
    } catch (IOException notTold) {
      return null;
    }
  }

  @Override
  public void write(LogConnection log, LogStart start) throws SQLException {
    log.bind(INSERT)
        .whole(start.boot())
        .text(booth)
        .whole(start.wallMillis(wallMillis, monotonicNanos))
        .whole(monotonicNanos)
        .text(machineBoot)
        .flag(start.isClockTrusted())
        .run();
  }
}
