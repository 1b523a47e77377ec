package org.boothlamp.boothlog;

import static org.boothlamp.testing.LogEntries.ended;
import static org.boothlamp.testing.LogEntries.eventEnded;
import static org.boothlamp.testing.LogEntries.point;
import static org.boothlamp.testing.LogEntries.started;
import static org.boothlamp.testing.LogEntries.startedUnassigned;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.List;
import org.boothlamp.judging.Signal;
import org.boothlamp.monitor.EventKind;
import org.boothlamp.monitor.LogEntry;
import org.boothlamp.monitor.SegmentEnd;
import org.boothlamp.monitor.WallClock;
import org.boothlamp.report.EnteredBy;
import org.boothlamp.report.ReplayChoice;
import org.boothlamp.report.ReplayStory;
import org.boothlamp.report.WeldReplay;
import org.boothlamp.words.Language;
import org.boothlamp.words.Phrases;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class ReplayReadingTest {

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
  void shouldReadARunWithItsTrace() {
    write(
        started(10, "A"),
        point(10, 1_012, 2_300, Signal.SETTLING),
        point(10.05, 1_112, 2_400, Signal.GREEN),
        ended(10, 0.1, SegmentEnd.ARC_OFF));
    try (BoothLogReader reader = BoothLogReader.open(path)) {
      WeldReplay replay = reader.weldReplay(1);
      assertEquals(2, replay.frames());
      assertEquals(110, replay.frame(1).amps(), 1e-6);
      assertEquals(105, replay.frame(1).lowestAmps(), 1e-6);
      assertEquals(24, replay.frame(1).volts(), 1e-6);
      assertEquals(Signal.GREEN, replay.frame(1).signal());
      assertNull(reader.weldReplay(2));
    }
  }

  @Test
  void shouldNameTheFaultThatTheSameStartOfTheMonitorHadInTheRun() {
    write(
        eventEnded(1, 0.5, EventKind.NOISE, 0),
        started(10, "A"),
        point(10, 1_012, 2_300, Signal.GREEN),
        eventEnded(10.05, 0.05, EventKind.CLIPPED, 0),
        point(10.05, 1_112, 2_400, Signal.FAULT),
        ended(10, 0.1, SegmentEnd.ARC_OFF));
    try (BoothLogReader reader = BoothLogReader.open(path)) {
      Phrases phrases = Phrases.in(Language.ENGLISH);
      ReplayStory story = ReplayStory.of(reader.weldReplay(1), phrases);
      assertTrue(
          story.at(0.05).says().contains(phrases.say("replay.fault.clipped")),
          story.at(0.05).says());
    }
  }

  @Test
  void shouldOfferRunsOfTheSamePassReferenceWeldsFirst() {
    write(
        started(10, "A"),
        ended(10, 5, SegmentEnd.ARC_OFF),
        started(20, "B"),
        ended(20, 5, SegmentEnd.ARC_OFF),
        startedUnassigned(30),
        ended(30, 5, SegmentEnd.ARC_OFF),
        started(40, "C"),
        ended(40, 5, SegmentEnd.ARC_OFF),
        started(50, "D"),
        ended(50, 5, SegmentEnd.ARC_OFF),
        started(60, "E"));
    Beads beads = new Beads(path, WallClock.SYSTEM);
    beads.markReference(1, "", EnteredBy.INSTRUCTOR);
    beads.markReference(2, "", EnteredBy.INSTRUCTOR);
    beads.withdrawReference(2, EnteredBy.INSTRUCTOR);
    try (BoothLogReader reader = BoothLogReader.open(path)) {
      List<ReplayChoice> choices = reader.replayChoices(reader.weldReplay(4).run(), 10);
      assertEquals(List.of("A", "D", "B"), choices.stream().map(ReplayChoice::trainee).toList());
      assertEquals(
          List.of(true, false, false), choices.stream().map(ReplayChoice::reference).toList());
      assertEquals(1, reader.replayChoices(reader.weldReplay(4).run(), 1).size());
    }
  }
}
