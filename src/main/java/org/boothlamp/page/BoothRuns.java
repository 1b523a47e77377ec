package org.boothlamp.page;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.boothlamp.boothlog.BoothLogReader;
import org.boothlamp.boothlog.SegmentKey;
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

  /** The shift of a span; nothing in it if there is no log yet. */
  ShiftReport of(ShiftSpan span, String booth) {
    if (!Files.exists(log)) {
      return ShiftReport.of(new ShiftRecords(List.of(), List.of(), List.of()), span, booth, "");
    }
    try (BoothLogReader reader = BoothLogReader.open(log)) {
      ShiftRecords records = reader.read(span.fromWallMillis(), span.untilWallMillis());
      return ShiftReport.of(records, span, booth, "");
    }
  }

  /** One run; null if there is none of this number. */
  RunSummary run(long id, ShiftSpan anySpan) {
    if (!Files.exists(log)) {
      return null;
    }
    try (BoothLogReader reader = BoothLogReader.open(log)) {
      SegmentKey key = reader.segmentKey(id);
      if (key == null) {
        return null;
      }
      long start = key.startWallMillis();
      ShiftSpan span = new ShiftSpan(start, start + 1, anySpan.zone());
      ShiftReport report = ShiftReport.of(reader.read(start, start + 1), span, "", "");
      return report.runs().stream().filter(run -> run.run().id() == id).findFirst().orElse(null);
    }
  }
}
