package org.boothlamp.boothlog;

import static org.boothlamp.testing.LogEntries.ended;
import static org.boothlamp.testing.LogEntries.started;
import static org.boothlamp.testing.LogEntries.touch;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.List;
import org.boothlamp.monitor.SegmentEnd;
import org.boothlamp.report.EventRecord;
import org.boothlamp.report.RunRecord;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

@Tag("quiet")
class BoothLogStallIT {

  @TempDir Path folder;

  private Path path() {
    return folder.resolve(BoothLog.FILE_NAME);
  }

  @Test
  void shouldLoseNothingWhileAnotherProgramHoldsTheFile() throws Exception {
    RunningLog log = new RunningLog(path());
    LogPump pump = new LogPump(log.queue, 10, 50);
    pump.runFor(1);
    try (LogConnection other = LogFile.openForWriting(path(), 5_000)) {
      other.execute("BEGIN IMMEDIATE");
      pump.runFor(10);
      other.execute("COMMIT");
    }
    RunningLog.secondsUntil(
        () -> log.records().events().stream().anyMatch(e -> e.what().equals("log stalled")), 5);
    log.close();

    assertEquals(List.of(), log.errors);
    assertEquals(0, pump.refused());
    assertTrue(pump.slowestOfferMillis() < 50, "slowest offer " + pump.slowestOfferMillis());
    EventRecord stall = log.records().events().get(0);
    assertTrue(stall.lengthSeconds() > 8 && stall.lengthSeconds() < 14, stall.toString());
    List<RunRecord> runs = log.records().runs();
    assertEquals(pump.finished(), runs.stream().filter(r -> r.end().equals("arc off")).count());
    assertEveryPointIsThere(runs);
  }

  private void assertEveryPointIsThere(List<RunRecord> runs) {
    try (BoothLogReader reader = BoothLogReader.open(path())) {
      for (RunRecord run : runs) {
        int points = reader.trace(run.id()).size();
        assertTrue(points >= Math.round(20 * run.lengthSeconds()), run + ": " + points);
      }
    }
  }

  @Test
  void shouldHaveFinishedSegmentAndTouchInTheFileWithinHalfSecond() throws Exception {
    try (RunningLog log = new RunningLog(path());
        BoothLogReader reader = BoothLogReader.open(path())) {
      RunningLog.secondsUntil(() -> log.writer.counters().commits > 0, 5);
      log.queue.offer(started(1, "T17"));
      log.queue.offer(ended(1, 5, SegmentEnd.ARC_OFF));
      double segment = RunningLog.secondsUntil(() -> reader.counts().segments() == 1, 5);
      log.queue.offer(touch(7, 0.1, "T17", false));
      double touch = RunningLog.secondsUntil(() -> reader.counts().touches() == 1, 5);

      assertTrue(segment < 0.5, "segment after " + segment + " s");
      assertTrue(touch < 0.5, "touch after " + touch + " s");
    }
  }

  @Test
  void shouldNoticeSignInOfAnotherProcessWithinSecond() throws Exception {
    try (RunningLog log = new RunningLog(path())) {
      LogPump pump = new LogPump(log.queue, 1_000);
      Process command = ChildJvm.start(SignInCommand.class, path(), "T17", "S-3F-18", "fill");
      while (command.isAlive()) {
        pump.runFor(0.05);
      }
      double late = RunningLog.secondsUntil(() -> !log.signIns.isEmpty(), 5);

      assertEquals(0, command.exitValue());
      assertTrue(late < 1, "noticed after " + late + " s");
      assertEquals("T17", log.signIns.get(0).trainee());
      assertEquals("fill", log.signIns.get(0).pass());
    }
  }
}
