package org.boothlamp.page;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.ZoneId;
import java.util.List;
import org.boothlamp.boothlog.BoothLogReader;
import org.boothlamp.report.RunRecord;
import org.boothlamp.report.RunSummary;
import org.boothlamp.report.ShiftRecords;
import org.boothlamp.report.ShiftReport;
import org.boothlamp.report.ShiftSpan;

/** Reads runs out of the booth log, each time anew and read-only. Safe to share. */
final class BoothRuns {

  private final Path log;

  BoothRuns(Path log) {
    this.log = log;
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
      RunRecord run = reader.findRun(id);
      if (run == null) {
        return null;
      }
      long start = run.startWallMillis();
      ShiftSpan span =
          new ShiftSpan(start, start + 1 + Math.round(1_000 * run.lengthSeconds()), zone);
      ShiftRecords around = reader.read(span.fromWallMillis(), span.untilWallMillis());
      ShiftRecords alone = new ShiftRecords(List.of(run), List.of(), around.events());
      return ShiftReport.of(alone, span, "", "").runs().get(0);
    }
  }
}
