package org.boothlamp.boothlog;

import static org.boothlamp.testing.LogEntries.FIRST_WALL_MILLIS;
import static org.boothlamp.testing.LogEntries.ended;
import static org.boothlamp.testing.LogEntries.started;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.nio.file.Path;
import java.util.List;
import org.boothlamp.monitor.SegmentEnd;
import org.boothlamp.report.EarlierRun;
import org.boothlamp.report.RunRecord;
import org.boothlamp.report.SignInMoment;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class GlanceReadingTest {

  @TempDir Path folder;

  @Test
  void shouldReadSignInsOfASpanInOrder() {
    Path path = folder.resolve(BoothLog.FILE_NAME);
    BoothLog.open(path).close();
    SignIns.add(path, "T-01", "", "", () -> 1_000);
    SignIns.add(path, "T-02", "", "", () -> 2_000);
    SignIns.add(path, "", "", "", () -> 3_000);
    SignIns.add(path, "T-03", "", "", () -> 4_000);
    try (BoothLogReader reader = BoothLogReader.open(path)) {
      assertEquals(
          List.of(new SignInMoment("", 2_000, "T-02"), new SignInMoment("", 3_000, "")),
          reader.signIns(2_000, 4_000));
    }
  }

  @Test
  void shouldReadOfEarlierRunsWhatTheReportSaysOfThem() {
    Path path = folder.resolve(BoothLog.FILE_NAME);
    try (WriterBench bench = new WriterBench(path)) {
      bench.offer(
          started(10, "A"),
          ended(10, 5, SegmentEnd.ARC_OFF),
          started(30, "B"),
          ended(30, 5, SegmentEnd.ARC_OFF));
    }
    try (BoothLogReader reader = BoothLogReader.open(path)) {
      List<RunRecord> runs = reader.read(0, Long.MAX_VALUE).runs();
      assertEquals(
          runs.stream().map(EarlierRun::of).toList(), reader.earlierRuns(0, Long.MAX_VALUE));
      assertEquals(1, reader.earlierRuns(FIRST_WALL_MILLIS + 20_000, Long.MAX_VALUE).size());
    }
  }
}
