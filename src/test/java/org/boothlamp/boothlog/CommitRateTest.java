package org.boothlamp.boothlog;

import static org.boothlamp.testing.LogEntries.ended;
import static org.boothlamp.testing.LogEntries.eventEnded;
import static org.boothlamp.testing.LogEntries.point;
import static org.boothlamp.testing.LogEntries.progress;
import static org.boothlamp.testing.LogEntries.started;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import org.boothlamp.monitor.EventKind;
import org.boothlamp.monitor.SegmentEnd;
import org.boothlamp.report.RunRecord;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** One run of a minute: how often the card is written, and how much a power cut would take. */
class CommitRateTest {

  private static final double ARC_SECONDS = 60;

  @TempDir Path folder;
  private WriterBench bench;

  @BeforeEach
  void open() {
    bench = new WriterBench(folder.resolve(BoothLog.FILE_NAME));
    bench.settleFor(1);
  }

  @AfterEach
  void close() {
    bench.close();
  }

  private double savedSeconds() {
    return bench.records().runs().stream().mapToDouble(RunRecord::lengthSeconds).max().orElse(0);
  }

  @Test
  void shouldCommitOnceInTwoSecondsOfArcAndLoseNoMoreThanThat() {
    long before = bench.writer.counters().commits;
    double mostUnsaved = 0;
    bench.offer(started(0, "T17"));
    for (int twentieth = 1; twentieth <= 20 * ARC_SECONDS; twentieth++) {
      bench.offer(point(twentieth / 20.0));
      if (twentieth % 2 == 0) {
        bench.offer(progress(0, twentieth / 20.0));
      }
      if (twentieth % 60 == 0) {
        bench.offer(eventEnded(twentieth / 20.0, 0.1, EventKind.LOST_PAIRS, 5));
      }
      bench.writer.step();
      mostUnsaved = Math.max(mostUnsaved, twentieth / 20.0 - savedSeconds());
    }
    long commits = bench.writer.counters().commits - before;
    // 1.9 s and not 2.0: what is left is for the commit itself
    assertTrue(commits <= ARC_SECONDS / 1.9, "commits: " + commits);
    assertTrue(mostUnsaved <= 2, "unsaved: " + mostUnsaved);
  }

  @Test
  void shouldWriteFinishedSegmentInTheNextStep() {
    bench.offer(started(0, "T17"), progress(0, 0.5), ended(0, 1, SegmentEnd.ARC_OFF));
    bench.writer.step();
    assertEquals(1, savedSeconds());
  }
}
