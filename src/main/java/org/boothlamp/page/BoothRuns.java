package org.boothlamp.page;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.ZoneId;
import java.util.List;
import org.boothlamp.boothlog.BoothLogReader;
import org.boothlamp.monitor.WallClock;
import org.boothlamp.report.RunSummary;
import org.boothlamp.report.ShiftRecords;
import org.boothlamp.report.ShiftSpan;

/** Reads runs out of the booth log, each time anew and read-only. Safe to share. */
final class BoothRuns {

  private final Path log;
  private final WallClock clock;

  BoothRuns(Path log, WallClock clock) {
    this.log = log;
    this.clock = clock;
  }

  /** All of a span; nothing if there is no log yet. */
  ShiftRecords of(ShiftSpan span) {
    if (!Files.exists(log)) {
      return new ShiftRecords(List.of(), List.of(), List.of());
    }
    try (BoothLogReader reader = BoothLogReader.open(log)) {
      return reader.read(span.fromWallMillis(), span.untilWallMillis());
    }
  }

  /** One run; null if there is none of this number. */
  RunSummary run(long id, ZoneId zone) {
    if (!Files.exists(log)) {
      return null;
    }
    try (BoothLogReader reader = BoothLogReader.open(log)) {
      return reader.findRun(id) == null ? null : reader.runSummary(id, zone, clock.epochMillis());
    }
  }
}
