package org.boothlamp.boothlog;

import static org.boothlamp.testing.LogEntries.ended;
import static org.boothlamp.testing.LogEntries.started;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.boothlamp.monitor.SegmentEnd;
import org.boothlamp.report.EventRecord;
import org.boothlamp.report.ShiftRecords;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class BoothLogDiskIT {

  @TempDir Path mountPoint;

  @Test
  void shouldKeepAllRowsWhenDiskIsFullForWhile() throws Exception {
    try (SmallDisk disk = new SmallDisk(mountPoint, "4m")) {
      Path path = disk.folder().resolve(BoothLog.FILE_NAME);
      RunningLog log = new RunningLog(path);
      weld(log, 0, 100);
      RunningLog.secondsUntil(() -> log.counts().segments() == 100, 10);
      disk.fill();
      weld(log, 100, 3_000);
      RunningLog.secondsUntil(() -> log.writer.counters().failedCommits > 4, 10);
      assertTrue(log.counts().segments() >= 100, "earlier rows can be read from a full disk");
      disk.free();
      RunningLog.secondsUntil(() -> log.counts().events() == 1, 10);
      log.close();

      ShiftRecords records = log.records();
      assertEquals(List.of(), log.errors);
      assertEquals(3_000, records.runs().size());
      assertEquals(3_000, records.runs().stream().distinct().count());
      EventRecord stall = records.events().get(0);
      assertEquals("disk full", stall.what());
      assertTrue(stall.count() > 4, stall.toString());
    }
  }

  private static void weld(RunningLog log, int from, int until) throws InterruptedException {
    for (int i = from; i < until; i++) {
      RunningLog.secondsUntil(() -> log.queue.size() < 4_000, 10);
      log.queue.offer(started(10 * i, "T17"));
      log.queue.offer(ended(10 * i, 8, SegmentEnd.ARC_OFF));
    }
  }

  @Test
  void shouldWriteEverythingOnceDiskThatCouldNotBeWrittenCan() throws Exception {
    try (SmallDisk disk = new SmallDisk(mountPoint, "8m")) {
      Assumptions.assumeTrue(disk.isMounted(), "no file system may be mounted here");
      Path path = disk.folder().resolve(BoothLog.FILE_NAME);
      RunningLog before = new RunningLog(path);
      weld(before, 0, 10);
      before.close();
      disk.makeReadOnly();

      RunningLog log = new RunningLog(path);
      weld(log, 10, 40);
      RunningLog.secondsUntil(() -> log.writer.counters().trouble != null, 10);
      disk.makeWritable();
      RunningLog.secondsUntil(() -> log.counts().segments() == 40, 10);
      log.close();

      assertEquals(List.of(), log.errors);
      assertTrue(
          log.records().events().stream().anyMatch(event -> event.what().equals("log stalled")));
    }
  }

  @Test
  void shouldReadFromMediumThatCannotBeWritten() throws Exception {
    try (SmallDisk disk = new SmallDisk(mountPoint, "4m")) {
      Path path = disk.folder().resolve(BoothLog.FILE_NAME);
      RunningLog log = new RunningLog(path);
      weld(log, 0, 10);
      log.close();
      if (disk.isMounted()) {
        disk.makeReadOnly();
        BoothLogException refused =
            assertThrows(BoothLogException.class, () -> BoothLog.open(path).close());
        assertTrue(refused.nextMove().contains("read-only"), refused.getMessage());
      } else {
        // What SQLite meets there: it cannot make the file that readers share.
        Files.createDirectory(path.resolveSibling(BoothLog.FILE_NAME + "-shm"));
      }
      assertEquals(10, log.records().runs().size());
    }
  }

  @Test
  void shouldReadWhatPowerLossLeftOnMediumThatCannotBeWritten() throws Exception {
    try (SmallDisk disk = new SmallDisk(mountPoint, "8m")) {
      Path path = disk.folder().resolve(BoothLog.FILE_NAME);
      RunningLog log = new RunningLog(path);
      weld(log, 0, 10);
      RunningLog.secondsUntil(() -> log.counts().segments() == 10, 10);
      Path all = copyAsLeft(path, "all.db", "", "-wal", "-shm");
      Path part = copyAsLeft(path, "part.db", "", "-wal");
      log.close();
      if (disk.isMounted()) {
        disk.makeReadOnly();
        // Better no answer than one that lacks the latest rows.
        BoothLogException refused =
            assertThrows(BoothLogException.class, () -> BoothLogReader.open(part).close());
        assertTrue(refused.nextMove().contains("its -wal file"), refused.getMessage());
      }
      try (BoothLogReader reader = BoothLogReader.open(all)) {
        assertEquals(10, reader.counts().segments());
      }
    }
  }

  private static Path copyAsLeft(Path path, String name, String... endings) throws Exception {
    for (String ending : endings) {
      Files.copy(
          path.resolveSibling(path.getFileName() + ending), path.resolveSibling(name + ending));
    }
    return path.resolveSibling(name);
  }
}
