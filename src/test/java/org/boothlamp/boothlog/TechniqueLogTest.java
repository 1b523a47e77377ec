package org.boothlamp.boothlog;

import static org.boothlamp.testing.LogEntries.ended;
import static org.boothlamp.testing.LogEntries.excursion;
import static org.boothlamp.testing.LogEntries.point;
import static org.boothlamp.testing.LogEntries.progress;
import static org.boothlamp.testing.LogEntries.started;
import static org.boothlamp.testing.LogEntries.startedUnassigned;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.boothlamp.judging.Side;
import org.boothlamp.judging.Signal;
import org.boothlamp.monitor.LogEntry;
import org.boothlamp.monitor.SegmentEnd;
import org.boothlamp.procedure.Quantity;
import org.boothlamp.report.RunRecord;
import org.boothlamp.technique.Cause;
import org.boothlamp.technique.ExplainedSpell;
import org.boothlamp.technique.TechniqueReading;
import org.boothlamp.testing.LogEntries;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The technique of runs on its way into the log and out again. */
class TechniqueLogTest {

  private static final double STEADY_SECONDS = 12;
  private static final double LONG_ARC_SECONDS = 3;

  @TempDir Path folder;
  private Path path;

  @BeforeEach
  void name() {
    path = folder.resolve(BoothLog.FILE_NAME);
  }

  private List<RunRecord> write(List<LogEntry> entries) {
    try (WriterBench bench = new WriterBench(path)) {
      bench.offer(entries.toArray(LogEntry[]::new));
    }
    return runs();
  }

  private List<RunRecord> runs() {
    try (BoothLogReader reader = BoothLogReader.open(path)) {
      return reader.read(0, Long.MAX_VALUE).runs();
    }
  }

  /** A steady stick run at 110 A and 23 V of which the arc grows at the end, saved as it goes. */
  private static List<LogEntry> longArc(LogEntry begin) {
    List<LogEntry> entries = new ArrayList<>(List.of(begin));
    double start = begin.startSeconds;
    for (int k = 0; k < (STEADY_SECONDS + LONG_ARC_SECONDS) * LogEntry.TRACE_HZ; k++) {
      double seconds = k / (double) LogEntry.TRACE_HZ;
      boolean isLong = seconds >= STEADY_SECONDS;
      float ripple = 10 * (k % 3 - 1);
      entries.add(
          point(
              start + seconds,
              (isLong ? 1_040 : 1_112) - ripple,
              (isLong ? 2_850 : 2_300) + ripple,
              Signal.GREEN));
      if (k % 20 == 19) {
        entries.add(progress(start, seconds));
      }
    }
    entries.add(excursion(start + 12.5, 2.5, Quantity.VOLTS, Side.HIGH, 28.5));
    return entries;
  }

  private static List<LogEntry> and(List<LogEntry> entries, LogEntry last) {
    entries.add(last);
    return entries;
  }

  private static LogEntry end(double startSeconds) {
    return ended(startSeconds, STEADY_SECONDS + LONG_ARC_SECONDS, SegmentEnd.ARC_OFF);
  }

  private long rows(String table) throws Exception {
    try (LogConnection connection = LogFile.openForReading(path)) {
      return connection.number("SELECT count(*) FROM " + table);
    }
  }

  @Test
  void shouldKeepTheCauseOfAnExcursionWithTheNumbersBehindIt() {
    TechniqueReading reading =
        write(and(longArc(started(10, "A")), end(10))).get(0).notes().technique();
    ExplainedSpell spell = reading.spells().get(0);
    assertEquals(1, reading.spells().size());
    assertEquals(Cause.ARC_LONGER, spell.cause());
    assertEquals(12.5, spell.spell().startSeconds());
    assertEquals(2.5, spell.spell().seconds());
    assertEquals(5.5, spell.evidence().deltaVolts(), 0.5);
    assertEquals(-7.2, spell.evidence().deltaAmps(), 0.7);
    assertTrue(spell.confidence() > 0.997);
    assertEquals(Quantity.VOLTS, reading.steadiness().quantity());
    assertEquals(23, reading.steadiness().level(), 0.1);
    assertEquals(2, reading.steadiness().restarts());
    assertNotNull(reading.transfer());
    assertNull(reading.swings());
  }

  @Test
  void shouldReadBackWhatWasRead() {
    RunTechnique technique = new RunTechnique(started(10, "A"));
    TracePoints points = new TracePoints();
    List<LogEntry> entries = longArc(started(10, "A"));
    for (LogEntry entry : entries) {
      if (entry.kind == LogEntry.Kind.TRACE_POINT) {
        points.add(entry);
        technique.addPoints(points.take());
      }
    }
    RunRecord run = write(and(entries, end(10))).get(0);
    run.excursions().forEach(technique::addExcursion);
    assertEquals(technique.read(end(10).figures), run.notes().technique());
  }

  @Test
  void shouldReadNothingWithoutAProcedureOrWhileItBurns() {
    List<LogEntry> entries = and(longArc(startedUnassigned(10)), end(10));
    entries.addAll(longArc(started(40, "A")));
    try (WriterBench bench = new WriterBench(path)) {
      bench.offer(entries.toArray(LogEntry[]::new));
      bench.settle();
      assertEquals(2, runs().size());
      runs().forEach(run -> assertNull(run.notes().technique()));
    }
  }

  @Test
  void shouldNotReadWhatWouldTakeTooLong() {
    RunTechnique technique = new RunTechnique(started(10, "A"));
    technique.addPoints(new byte[(RunTechnique.MOST_POINTS + 1) * TracePoints.POINT_BYTES]);
    assertNull(technique.read(end(10).figures));
  }

  @Test
  void shouldKeepARunThatCannotBeRead() {
    List<LogEntry> entries = longArc(started(10, "A"));
    entries.add(excursion(20, Double.NaN, Quantity.AMPS, Side.LOW, 90));
    RunRecord run = write(and(entries, end(10))).get(0);
    assertEquals(2, run.excursions().size());
    assertEquals("arc off", run.end());
    assertNull(run.notes().technique());
  }

  @Test
  void shouldGoWithItsRun() throws Exception {
    write(and(longArc(started(10, "A")), end(10)));
    assertEquals(1, rows("technique"));
    assertEquals(1, rows("excursion_cause"));
    Forgetting.forget(path, "A", () -> LogEntries.FIRST_WALL_MILLIS);
    assertEquals(0, rows("technique"));
    assertEquals(0, rows("excursion_cause"));
  }
}
