package org.boothlamp.boothlog;

import static org.boothlamp.testing.LogEntries.FIRST_WALL_MILLIS;
import static org.boothlamp.testing.LogEntries.ended;
import static org.boothlamp.testing.LogEntries.point;
import static org.boothlamp.testing.LogEntries.progress;
import static org.boothlamp.testing.LogEntries.started;
import static org.boothlamp.testing.LogEntries.touch;
import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.ZoneOffset;
import java.util.List;
import org.boothlamp.judging.Signal;
import org.boothlamp.monitor.LogEntry;
import org.boothlamp.monitor.SegmentEnd;
import org.boothlamp.report.RunFlag;
import org.boothlamp.report.RunRecord;
import org.boothlamp.report.ShiftRecords;
import org.boothlamp.signal.ChannelScale;
import org.boothlamp.signal.PairScale;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class BoothLogReaderTest {

  @TempDir Path folder;
  private Path path;

  @BeforeEach
  void name() {
    path = folder.resolve(BoothLog.FILE_NAME);
  }

  private void write(LogEntry... entries) {
    try (WriterBench bench = new WriterBench(path)) {
      bench.offer(entries);
    }
  }

  @Test
  void shouldReadOnlyWhatBeganInTheSpan() {
    write(
        started(10, "A"),
        ended(10, 5, SegmentEnd.ARC_OFF),
        touch(19, 0.1, "A", false),
        started(20, "B"),
        ended(20, 5, SegmentEnd.ARC_OFF),
        touch(29.9, 0.1, "B", false),
        started(30, "C"),
        ended(30, 5, SegmentEnd.ARC_OFF));

    try (BoothLogReader reader = BoothLogReader.open(path)) {
      ShiftRecords records = reader.read(FIRST_WALL_MILLIS + 20_000, FIRST_WALL_MILLIS + 30_000);
      assertEquals(List.of("B"), records.runs().stream().map(RunRecord::trainee).toList());
      assertEquals(1, records.touches().size());
      assertEquals(3, records.runs().get(0).windows().size());
    }
  }

  @Test
  void shouldReadTraceInAmpsAndVolts() {
    write(
        started(10, "A"),
        point(10, 1_012, 2_300, Signal.SETTLING),
        point(10.05, 1_112.5f, 2_400.25f, Signal.RED),
        progress(10, 1),
        point(10.1, Float.NaN, Float.NaN, Signal.FAULT),
        point(10.15, 1_012, 2_300, Signal.GREEN),
        ended(10, 2, SegmentEnd.ARC_OFF));

    try (BoothLogReader reader = BoothLogReader.open(path)) {
      SegmentTrace trace = reader.trace(1);
      assertArrayEquals(new double[] {100, 110.05, Double.NaN, 100}, trace.meanAmps, 1e-9);
      assertArrayEquals(new double[] {95, 105, Double.NaN, 95}, trace.lowestAmps, 1e-9);
      assertArrayEquals(new double[] {105, 115, Double.NaN, 105}, trace.highestAmps, 1e-9);
      assertArrayEquals(new double[] {23, 24.0025, Double.NaN, 23}, trace.meanVolts, 1e-9);
      assertArrayEquals(new double[] {22.5, 23.5, Double.NaN, 22.5}, trace.lowestVolts, 1e-9);
      assertArrayEquals(new double[] {23.5, 24.5, Double.NaN, 23.5}, trace.highestVolts, 1e-9);
      assertArrayEquals(
          new Signal[] {Signal.SETTLING, Signal.RED, Signal.FAULT, Signal.GREEN}, trace.signals);
    }
  }

  @Test
  void shouldKeepLowestBelowHighestWhenChannelIsTurnedRound() {
    LogEntry start = started(10, "A");
    start.scale = new PairScale(new ChannelScale(-0.1, 0), new ChannelScale(0.01, 0));
    write(start, point(10, 1_000, 2_300, Signal.GREEN), ended(10, 2, SegmentEnd.ARC_OFF));

    try (BoothLogReader reader = BoothLogReader.open(path)) {
      SegmentTrace trace = reader.trace(1);
      assertEquals(-100, trace.meanAmps[0], 1e-9);
      assertEquals(-105, trace.lowestAmps[0], 1e-9);
      assertEquals(-95, trace.highestAmps[0], 1e-9);
    }
  }

  @Test
  void shouldReadEveryPointOfLongSegment() {
    int points = 730;
    LogEntry[] entries = new LogEntry[points + 2];
    entries[0] = started(0, "A");
    for (int i = 0; i < points; i++) {
      entries[i + 1] = point(i / 20.0, 12 + i, i, Signal.GREEN);
    }
    entries[points + 1] = ended(0, points / 20.0, SegmentEnd.ARC_OFF);
    write(entries);

    try (BoothLogReader reader = BoothLogReader.open(path)) {
      SegmentTrace trace = reader.trace(1);
      assertEquals(points, trace.size());
      for (int i = 0; i < points; i++) {
        assertEquals(i * 0.1, trace.meanAmps[i], 1e-9);
      }
    }
  }

  @Test
  void shouldAnswerNullWhereThereIsNothing() {
    write();
    try (BoothLogReader reader = BoothLogReader.open(path)) {
      assertNull(reader.trace(1));
      assertNull(reader.latestSignIn());
      assertEquals(new LogCounts(1, 0, 0, 0, 0, 0, 0), reader.counts());
    }
  }

  @Test
  void shouldTellLatestSignIn() {
    SignIns.add(path, "A", "", "", () -> 1_000);
    SignIns.add(path, "B", "P", "root", () -> 2_000);
    try (BoothLogReader reader = BoothLogReader.open(path)) {
      assertEquals(new SignIn(2, 2_000, "B", "P", "root"), reader.latestSignIn());
    }
  }

  @Test
  void shouldReadWhereTheFilesForSharingCannotBeMade() throws Exception {
    write(started(10, "A"), ended(10, 5, SegmentEnd.ARC_OFF));
    // As on a read-only medium: SQLite cannot make the file that readers share.
    Files.createDirectory(folder.resolve(BoothLog.FILE_NAME + "-shm"));

    try (BoothLogReader reader = BoothLogReader.open(path)) {
      assertEquals(1, reader.counts().segments());
    }
  }

  @Test
  void shouldNotSkipRowsThatAreOnlyInTheWriteAheadFile() throws Exception {
    WriterBench bench = new WriterBench(path);
    bench.offer(started(10, "A"), ended(10, 5, SegmentEnd.ARC_OFF));
    bench.settle();
    Path copy = copyOfBothFiles("copy.db");
    Path unshared = copyOfBothFiles("unshared.db");
    bench.close();

    try (BoothLogReader reader = BoothLogReader.open(copy)) {
      assertEquals(1, reader.counts().segments());
    }
    Files.createDirectory(folder.resolve("unshared.db-shm"));
    try (BoothLogReader reader = BoothLogReader.open(unshared)) {
      assertEquals(1, reader.counts().segments());
    }
  }

  private Path copyOfBothFiles(String name) throws Exception {
    Files.copy(folder.resolve("booth.db-wal"), folder.resolve(name + "-wal"));
    return Files.copy(path, folder.resolve(name));
  }

  @Test
  void shouldSayThatThereIsNoLog() {
    BoothLogException missing =
        assertThrows(BoothLogException.class, () -> BoothLogReader.open(path));
    assertEquals(
        "booth log "
            + path
            + ": there is no such file; correct the log path, or start the monitor once",
        missing.getMessage());
    assertEquals(path, missing.path());
  }

  @Test
  void shouldTellOfARunWhoseTimeOfDayIsNotKnown() {
    Path late = folder.resolve("late.db");
    try (LateClockLog log = new LateClockLog(late);
        BoothLogReader reader = BoothLogReader.open(late)) {
      log.weld();
      assertTrue(reader.runSummary(1, ZoneOffset.UTC, 0).has(RunFlag.NO_TIME));
      assertEquals(1, reader.segmentKeys(0, 0).size());
      log.setClock();
      assertFalse(reader.runSummary(1, ZoneOffset.UTC, 0).has(RunFlag.NO_TIME));
      assertEquals(0, reader.segmentKeys(0, 0).size());
    }
  }
}
