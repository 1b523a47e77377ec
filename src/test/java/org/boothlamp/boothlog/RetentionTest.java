package org.boothlamp.boothlog;

import static org.boothlamp.testing.LogEntries.ended;
import static org.boothlamp.testing.LogEntries.point;
import static org.boothlamp.testing.LogEntries.progress;
import static org.boothlamp.testing.LogEntries.started;
import static org.boothlamp.testing.LogEntries.touch;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Set;
import org.boothlamp.judging.Signal;
import org.boothlamp.monitor.EventKind;
import org.boothlamp.monitor.SegmentEnd;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** How old rows become, by a clock turned by hand. */
class RetentionTest {

  private static final double DAY_SECONDS = 86_400;
  private static final String EVENTS = "SELECT count(*) FROM event WHERE word = 'old rows deleted'";

  @TempDir Path folder;
  private WriterBench bench;

  @BeforeEach
  void open() {
    bench = new WriterBench(folder.resolve("booth.db"));
  }

  @AfterEach
  void close() {
    bench.close();
  }

  /** A run of 10 s with a trace, and a touch after it. */
  private void weld(double startSeconds) {
    bench.offer(started(startSeconds, "T-04"));
    for (int i = 0; i < 100; i++) {
      bench.offer(point(startSeconds + i / 10.0, 1_000, 2_000, Signal.GREEN));
    }
    bench.offer(progress(startSeconds, 9), ended(startSeconds, 10, SegmentEnd.ARC_OFF));
    bench.offer(touch(startSeconds + 12, 0.2, "T-04", false));
    bench.settle();
  }

  /** A day after the other, each with a run; the bench's clock is at the end of the last. */
  private void weldFor(int days) {
    for (int day = 0; day < days; day++) {
      weld(day * DAY_SECONDS);
      bench.passAndSettle(DAY_SECONDS);
    }
  }

  private long count(String table) throws Exception {
    return bench.number("SELECT count(*) FROM " + table);
  }

  private String told() throws Exception {
    return bench.text(
        "SELECT detail FROM event WHERE word = 'old rows deleted' ORDER BY id DESC LIMIT 1");
  }

  @Test
  void shouldKeepEverythingUnlessTold() throws Exception {
    weldFor(4);
    bench.passAndSettle(400 * DAY_SECONDS);
    assertEquals(4, count("segment"));
    assertEquals(0, bench.number(EVENTS));
  }

  @Test
  void shouldDeleteEachKindAtItsOwnAge() throws Exception {
    bench.writer.keepFor(new RetentionRule(1, 3, 2, 1), SentRows.NOT_SENT_ON);
    bench.addSignIn("T-04");
    bench.writer.note(EventKind.STARTED, "");
    weldFor(6);
    // Runs began on days 0 to 5, and now it is day 6, which does not count.
    assertEquals(3, count("segment"));
    assertEquals(3, count("touch"));
    assertEquals(1, bench.number("SELECT count(DISTINCT segment_id) FROM trace"));
    assertEquals(0, count("sign_in"));
    assertEquals(0, bench.number("SELECT count(*) FROM event WHERE word = 'started'"));
    assertEquals(1, count("boot"));
  }

  @Test
  void shouldTellOnceADayWhatWasDeleted() throws Exception {
    weldFor(3);
    bench.writer.keepFor(new RetentionRule(0, 1, 0, 0), SentRows.NOT_SENT_ON);
    bench.passAndSettle(61);
    assertEquals("2 runs, 2 touches", told());
    bench.passAndSettle(3_600);
    bench.passAndSettle(3_600);
    assertEquals(1, bench.number(EVENTS));
    assertEquals(4, bench.number("SELECT sum(count) FROM event WHERE word = 'old rows deleted'"));
    bench.passAndSettle(DAY_SECONDS);
    assertEquals("1 run, 1 touch", told());
    assertEquals(2, bench.number(EVENTS));
  }

  @Test
  void shouldDeleteNothingInTheFirstMinute() throws Exception {
    weldFor(3);
    bench.writer.keepFor(new RetentionRule(0, 1, 0, 0), SentRows.NOT_SENT_ON);
    bench.passAndSettle(50);
    assertEquals(3, count("segment"));
  }

  @Test
  void shouldDeleteNothingWhileAnArcBurns() throws Exception {
    weldFor(3);
    bench.writer.keepFor(new RetentionRule(0, 1, 0, 0), SentRows.NOT_SENT_ON);
    double start = 3 * DAY_SECONDS;
    bench.offer(started(start, "T-04"), progress(start, 2));
    bench.passAndSettle(120);
    assertEquals(4, count("segment"));
    bench.offer(ended(start, 120, SegmentEnd.ARC_OFF));
    bench.settle();
    assertEquals(2, count("segment"));
  }

  @Test
  void shouldKeepWhatWasNotSentAndSaySo() throws Exception {
    weldFor(5);
    SentRows sent = table -> new SentRows.Unsent(table.equals("segment") ? 3 : 99, Set.of(2L));
    bench.writer.keepFor(new RetentionRule(0, 1, 0, 0), sent);
    bench.passAndSettle(61);
    assertEquals("2 runs, 3 touches; not sent yet and kept: 2 runs, 1 touch", told());
    assertEquals(2 + 4 + 5, bench.number("SELECT sum(id) FROM segment"));
  }

  @Test
  void shouldDeleteNothingWhileItCannotBeToldWhatWasSent() throws Exception {
    weldFor(3);
    SentRows unknown =
        table -> {
          throw new IOException("the marks are on another disk");
        };
    bench.writer.keepFor(new RetentionRule(1, 1, 1, 1), unknown);
    bench.passAndSettle(61);
    bench.passAndSettle(4_000);
    assertEquals(3, count("segment"));
    assertEquals(0, bench.number(EVENTS));
  }

  @Test
  void shouldDeleteThousandsInSmallSteps() throws Exception {
    for (int i = 0; i < 500; i++) {
      bench.offer(touch(i, 0.2, "T-04", false));
    }
    bench.passAndSettle(3 * DAY_SECONDS);
    bench.writer.keepFor(new RetentionRule(0, 1, 0, 0), SentRows.NOT_SENT_ON);
    bench.pass(61);
    long before = count("touch");
    bench.writer.step();
    bench.writer.step();
    long after = count("touch");
    assertTrue(after < before && before - after <= 40, before + " to " + after);
    bench.settleFor(3);
    assertEquals(0, count("touch"));
  }

  @Test
  void shouldKeepRowsWhoseTimeOfDayWasNeverKnown() throws Exception {
    weldFor(3);
    bench.execute("UPDATE boot SET clock_trusted = 0");
    bench.writer.keepFor(new RetentionRule(1, 1, 1, 1), SentRows.NOT_SENT_ON);
    bench.passAndSettle(61);
    assertEquals(3, count("segment"));
  }

  @Test
  void shouldDeleteNothingWhileTheClockIsNotTrusted() throws Exception {
    Path path = folder.resolve("other.db");
    WriterBench.MachineClock machine = new WriterBench.MachineClock(1_772_434_800_000L);
    try (WriterBench other = WriterBench.withMachineClock(path, machine)) {
      other.offer(touch(0, 0.2, "T-04", false));
      other.settle();
      other.writer.keepFor(new RetentionRule(1, 1, 1, 1), SentRows.NOT_SENT_ON);
      other.passAndSettle(10 * DAY_SECONDS);
      assertEquals(1, other.number("SELECT count(*) FROM touch"));
      machine.trusted = true;
      other.passAndSettle(10);
      assertEquals(0, other.number("SELECT count(*) FROM touch"));
    }
  }
}
