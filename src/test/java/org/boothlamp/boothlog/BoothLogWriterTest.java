package org.boothlamp.boothlog;

import static org.boothlamp.testing.LogEntries.FIRST_WALL_MILLIS;
import static org.boothlamp.testing.LogEntries.dropped;
import static org.boothlamp.testing.LogEntries.ended;
import static org.boothlamp.testing.LogEntries.eventEnded;
import static org.boothlamp.testing.LogEntries.eventStarted;
import static org.boothlamp.testing.LogEntries.excursion;
import static org.boothlamp.testing.LogEntries.point;
import static org.boothlamp.testing.LogEntries.progress;
import static org.boothlamp.testing.LogEntries.started;
import static org.boothlamp.testing.LogEntries.startedUnassigned;
import static org.boothlamp.testing.LogEntries.touch;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.List;
import org.boothlamp.calibration.CalibrationNumbers;
import org.boothlamp.judging.Side;
import org.boothlamp.monitor.EventKind;
import org.boothlamp.monitor.LogEntry;
import org.boothlamp.monitor.SegmentEnd;
import org.boothlamp.procedure.Quantity;
import org.boothlamp.report.EventRecord;
import org.boothlamp.report.ExcursionRecord;
import org.boothlamp.report.RunNotes;
import org.boothlamp.report.RunRecord;
import org.boothlamp.report.TouchRecord;
import org.boothlamp.signal.Polarity;
import org.boothlamp.testing.LogEntries;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class BoothLogWriterTest {

  @TempDir Path folder;
  private Path path;
  private WriterBench bench;

  @BeforeEach
  void open() {
    path = folder.resolve(BoothLog.FILE_NAME);
    bench = new WriterBench(path);
  }

  @AfterEach
  void close() {
    bench.close();
  }

  private void settleFor(int seconds) {
    for (int half = 0; half < 2 * seconds; half++) {
      bench.settle();
    }
  }

  private RunRecord onlyRun() {
    List<RunRecord> runs = bench.records().runs();
    assertEquals(1, runs.size());
    return runs.get(0);
  }

  @Test
  void shouldKeepEveryFigureOfFinishedSegment() {
    bench.offer(
        started(100, "T17"),
        excursion(103.5, 1.25, Quantity.VOLTS, Side.HIGH, 27.75),
        progress(100, 5),
        excursion(106, 0.5, Quantity.AMPS, Side.LOW, 91.5),
        ended(100, 20, SegmentEnd.ARC_OFF));
    bench.settle();

    RunRecord expected =
        new RunRecord(
            1,
            "booth-3",
            "T17",
            "S-3F-18",
            "2",
            "fill",
            "111",
            LogEntries.WINDOWS,
            FIRST_WALL_MILLIS + 100_000,
            100,
            20,
            110.5,
            23.25,
            111.5,
            23.5,
            51_400,
            2_570,
            Polarity.DC_PLUS,
            41,
            2,
            10,
            4,
            3,
            2,
            1,
            0.2,
            true,
            CalibrationNumbers.NONE,
            "arc off",
            List.of(
                new ExcursionRecord(Quantity.VOLTS, Side.HIGH, 3.5, 1.25, 27.75),
                new ExcursionRecord(Quantity.AMPS, Side.LOW, 6, 0.5, 91.5)),
            RunNotes.NONE);
    assertEquals(List.of(expected), bench.records().runs());
  }

  @Test
  void shouldKeepSegmentThatNobodySignedInFor() {
    LogEntry end = ended(3, 4, SegmentEnd.GAP);
    end.figures.shortCircuits = -1;
    end.figures.meanAmps = Double.NaN;
    end.figures.polarity = Polarity.AC;
    bench.offer(startedUnassigned(3), end);
    bench.settle();

    RunRecord run = onlyRun();
    assertEquals("", run.trainee());
    assertEquals("", run.procedureId());
    assertEquals("", run.process());
    assertEquals(List.of(), run.windows());
    assertFalse(run.calibrated());
    assertEquals(-1, run.shortCircuits());
    assertEquals(Double.NaN, run.meanAmps());
    assertEquals(Polarity.AC, run.polarity());
    assertEquals("gap", run.end());
  }

  @Test
  void shouldLeaveNoRowOfContactThatWasDropped() {
    bench.offer(started(1, "T17"), point(1), dropped(1), touch(1, 0.2, "T17", false));
    bench.settle();

    assertEquals(0, bench.counts().segments());
    assertEquals(
        List.of(new TouchRecord("T17", FIRST_WALL_MILLIS + 1_000, 1, 0.2, false)),
        bench.records().touches());
  }

  @Test
  void shouldTakeSegmentBackThatWasSavedAndThenDropped() {
    bench.offer(started(1, "T17"), point(1), progress(1, 1), progress(1, 2));
    bench.settle();
    assertEquals(1, bench.counts().segments());
    bench.offer(dropped(1), touch(1, 2.5, "T17", true));
    bench.settle();

    assertEquals(0, bench.counts().segments());
    assertTrue(bench.records().touches().get(0).stuck());
  }

  @Test
  void shouldShowRunningSegmentAsFarAsItIsSaved() {
    bench.offer(started(10, "T17"));
    bench.settle();
    assertEquals(0, bench.counts().segments());

    bench.offer(progress(10, 1));
    bench.settle();
    assertEquals(1, onlyRun().lengthSeconds());
    assertEquals("running", onlyRun().end());
    assertEquals(1, bench.counts().openSegments());

    bench.offer(progress(10, 2), ended(10, 2.5, SegmentEnd.ARC_OFF));
    bench.settle();
    assertEquals(2.5, onlyRun().lengthSeconds());
    assertEquals(0, bench.counts().openSegments());
  }

  @Test
  void shouldNotSaveMoreOftenThanTheLastTwoSecondsNeed() {
    bench.settle();
    long before = bench.writer.counters().commits;
    bench.offer(started(0, "T17"));
    for (int half = 1; half <= 60; half++) {
      bench.offer(progress(0, half / 2.0));
      bench.settle();
      double saved = bench.counts().segments() == 0 ? 0 : onlyRun().lengthSeconds();
      assertTrue(half / 2.0 + 0.5 - saved < 2.01, "next figures would leave too much unsaved");
    }
    // 30 s: every third of the half-second figures is saved
    assertEquals(20, bench.writer.counters().commits - before);
  }

  @Test
  void shouldWriteWhatComesTogetherInOneCommit() {
    bench.settle();
    long before = bench.writer.counters().commits;
    bench.offer(touch(1, 0.1, "", false), touch(2, 0.1, "", false), touch(3, 0.1, "", false));
    bench.settle();

    assertEquals(3, bench.counts().touches());
    assertEquals(1, bench.writer.counters().commits - before);
  }

  @Test
  void shouldEndEventThatBegan() {
    bench.offer(eventStarted(5, EventKind.NO_SAMPLES));
    bench.settle();
    EventRecord open = bench.records().events().get(0);
    assertEquals("no samples", open.what());
    assertTrue(open.fault());
    assertEquals(Double.NaN, open.lengthSeconds());

    bench.offer(eventEnded(5, 1.5, EventKind.NO_SAMPLES, 7_500));
    bench.settle();
    assertEquals(
        List.of(new EventRecord("no samples", true, FIRST_WALL_MILLIS + 5_000, 5, 1.5, 7_500, "")),
        bench.records().events());
  }

  @Test
  void shouldKeepEventThatStandsAlone() {
    bench.offer(eventEnded(6, 0, EventKind.LOST_PAIRS, 12));
    bench.settle();

    assertEquals(
        List.of(new EventRecord("lost pairs", false, FIRST_WALL_MILLIS + 6_000, 6, 0, 12, "")),
        bench.records().events());
  }

  @Test
  void shouldNoteWhatTheSamplerDoesNotKnow() {
    bench.writer.note(EventKind.SIGN_IN_REFUSED, "no procedure \"S-9\"");
    bench.settle();

    EventRecord event = bench.records().events().get(0);
    assertEquals("sign-in refused", event.what());
    assertEquals("no procedure \"S-9\"", event.detail());
    assertEquals(FIRST_WALL_MILLIS, event.startWallMillis());
    assertEquals(Double.NaN, event.startSeconds());
    assertEquals(0, event.lengthSeconds());
  }

  @Test
  void shouldCloseSegmentThatPowerLossLeftOpen() {
    bench.offer(started(10, "T17"), progress(10, 4.5));
    bench.settle();
    bench.cutOff();
    bench = new WriterBench(path);
    bench.settle();

    assertEquals("power loss", onlyRun().end());
    assertEquals(4.5, onlyRun().lengthSeconds());
    EventRecord event = bench.records().events().get(0);
    assertEquals("power loss", event.what());
    assertEquals(FIRST_WALL_MILLIS + 14_500, event.startWallMillis());
    assertEquals(14.5, event.startSeconds());
    assertEquals(2, bench.counts().boots());
  }

  @Test
  void shouldGoOnCountingRowsAfterRestart() {
    bench.offer(started(1, "A"), ended(1, 5, SegmentEnd.ARC_OFF), touch(7, 0.1, "A", false));
    bench.close();
    bench = new WriterBench(path);
    bench.offer(started(2, "B"), ended(2, 5, SegmentEnd.ARC_OFF), touch(8, 0.1, "B", false));
    bench.settle();

    assertEquals(List.of(1L, 2L), bench.records().runs().stream().map(RunRecord::id).toList());
    assertEquals(2, bench.records().touches().size());
  }

  @Test
  void shouldWriteAllThatWaitsWhenClosed() {
    bench.offer(started(1, "T17"), progress(1, 1), point(1), touch(5, 0.1, "", false));
    bench.writer.note(EventKind.STOPPED, "");
    bench.close();

    assertEquals("stopped", onlyRun().end());
    assertEquals(1, bench.counts().touches());
    assertEquals("stopped", bench.records().events().get(0).what());
    bench = new WriterBench(path);
    bench.settle();
    assertEquals(1, bench.counts().events(), "nothing was cut off");
  }

  @Test
  void shouldTellHowManyEntriesFullQueueLost() {
    bench.close();
    LogQueue small = new LogQueue(4);
    bench = new WriterBench(path, small);
    for (int i = 0; i < 10; i++) {
      small.offer(touch(i, 0.1, "", false));
    }
    bench.settle();

    assertEquals(4, bench.counts().touches());
    EventRecord event = bench.records().events().get(0);
    assertEquals("log queue full", event.what());
    assertEquals(6, event.count());
    assertEquals(1, bench.counts().events());
  }

  @Test
  void shouldEndSegmentWithItsLastFiguresWhenItsEndWasLost() {
    bench.offer(started(1, "T17"), progress(1, 4), started(20, "T17"));
    bench.offer(ended(20, 6, SegmentEnd.ARC_OFF));
    bench.settle();

    List<RunRecord> runs = bench.records().runs();
    assertEquals(2, runs.size());
    assertEquals("gap", runs.get(0).end());
    assertEquals(4, runs.get(0).lengthSeconds());
    assertEquals("arc off", runs.get(1).end());
  }

  @Test
  void shouldCountEntriesOfSegmentWhoseStartWasLost() {
    bench.offer(point(1), progress(1, 1), ended(1, 2, SegmentEnd.ARC_OFF));
    bench.settle();

    assertEquals(0, bench.counts().segments());
    assertEquals(3, bench.writer.counters().strayEntries);
  }

  @Test
  void shouldGoOnAfterAnEntryItCannotUnderstand() {
    LogEntry broken = eventEnded(1, 0, EventKind.LOST_PAIRS, 1);
    broken.kind = null;
    bench.offer(broken, touch(2, 0.1, "", false));
    bench.settle();

    assertEquals(1, bench.writer.counters().strayEntries);
    assertEquals(1, bench.counts().touches());
  }

  @Test
  void shouldLeaveOutOnlyTheRowThatIsRefused() throws Exception {
    bench.settle();
    bench.execute(
        "CREATE TRIGGER refuse BEFORE INSERT ON touch WHEN new.trainee = 'X'"
            + " BEGIN SELECT RAISE(ABORT, 'refused'); END");
    bench.offer(touch(1, 0.1, "A", false), touch(2, 0.1, "X", false), touch(3, 0.1, "B", false));
    bench.settle();

    assertEquals(
        List.of("A", "B"), bench.records().touches().stream().map(TouchRecord::trainee).toList());
    assertEquals(1, bench.writer.counters().refusedRows);
  }

  @Test
  void shouldKeepRowsWhileTheyCannotBeWrittenAndThenTellOfTheStall() throws Exception {
    bench.settle();
    bench.execute("PRAGMA busy_timeout = 0");
    try (LogConnection other = LogFile.openForWriting(path, 0)) {
      other.execute("BEGIN IMMEDIATE");
      for (int i = 0; i < 500; i++) {
        bench.offer(touch(i, 0.1, "T17", false));
      }
      settleFor(5);
      assertEquals(0, bench.counts().touches());
      assertTrue(bench.writer.counters().failedCommits >= 3);
      other.execute("COMMIT");
    }
    settleFor(5);
    assertEquals(500, bench.counts().touches());
    EventRecord event = bench.records().events().get(0);
    assertEquals("log stalled", event.what());
    assertTrue(event.lengthSeconds() > 4 && event.lengthSeconds() < 8, event.toString());
    assertEquals(bench.writer.counters().failedCommits, event.count());
  }
}
