package org.boothlamp.boothlog;

import static org.boothlamp.testing.LogEntries.ended;
import static org.boothlamp.testing.LogEntries.point;
import static org.boothlamp.testing.LogEntries.started;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.concurrent.atomic.AtomicInteger;
import org.boothlamp.monitor.LogEntry;
import org.boothlamp.monitor.SegmentEnd;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A disk that SQLite finds full: the file may not grow beyond some pages. */
class FullDiskTest {

  @TempDir Path folder;

  private static void weld(WriterBench bench, int from, int until, int points) {
    for (int i = from; i < until; i++) {
      bench.offer(started(10 * i, "T17"));
      for (int point = 0; point < points; point++) {
        bench.offer(point(10 * i + point / (double) LogEntry.TRACE_HZ));
      }
      bench.offer(ended(10 * i, 8, SegmentEnd.ARC_OFF));
      bench.writer.step();
    }
  }

  private static void limit(WriterBench bench, int morePages) throws Exception {
    bench.execute("PRAGMA max_page_count = " + (bench.number("PRAGMA page_count") + morePages));
  }

  private Path path() {
    return folder.resolve(BoothLog.FILE_NAME);
  }

  @Test
  void shouldKeepFinishedSegmentsWhenThereIsRoomForThemButNotForTheirTraces() throws Exception {
    try (WriterBench bench = new WriterBench(path())) {
      bench.settle();
      weld(bench, 0, 1, 0);
      limit(bench, 3);
      weld(bench, 1, 11, 160);
      bench.settleFor(5);
      assertEquals(11, bench.counts().segments());
      assertNotNull(bench.writer.counters().trouble);
      limit(bench, 1_000);
      bench.settleFor(5);
      assertEquals(160, trace(bench, 11), "the traces follow when there is room");
      assertTrue(
          bench.records().events().stream().anyMatch(event -> event.what().equals("disk full")));
    }
  }

  private static int trace(WriterBench bench, long segment) {
    try (BoothLogReader reader = bench.reader()) {
      return reader.trace(segment).size();
    }
  }

  @Test
  void shouldAskForRoomBeforeARowHasToWait() throws Exception {
    AtomicInteger asked = new AtomicInteger();
    try (WriterBench bench =
        new WriterBench(path(), new LogQueue(1_000), bytes -> asked.incrementAndGet() > 0)) {
      bench.settle();
      limit(bench, 0);
      weld(bench, 0, 20, 100);
      assertTrue(asked.get() > 0);
      limit(bench, 1_000);
      bench.settleFor(5);
      assertEquals(20, bench.counts().segments());
    }
  }

  @Test
  void shouldGiveUpTracesBeforeFinishedSegmentsWhenMemoryIsFullToo() throws Exception {
    int segments = LogBatch.MOST_ROWS / 5;
    try (WriterBench bench = new WriterBench(path())) {
      bench.settle();
      weld(bench, 0, 1, 0);
      bench.execute("PRAGMA busy_timeout = 0");
      try (LogConnection other = LogFile.openForWriting(path(), 0)) {
        other.execute("BEGIN IMMEDIATE");
        weld(bench, 1, segments, 1);
        other.execute("COMMIT");
      }
      bench.settleFor(5);
      assertEquals(segments, bench.counts().segments());
    }
  }
}
