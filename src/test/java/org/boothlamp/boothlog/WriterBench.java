package org.boothlamp.boothlog;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import org.boothlamp.monitor.LogEntry;
import org.boothlamp.report.ShiftRecords;
import org.boothlamp.testing.LogEntries;

/** A writer on a real file whose steps and clocks are turned by hand. */
final class WriterBench implements AutoCloseable {

  final List<SignIn> signIns = new ArrayList<>();
  final LogQueue queue;
  final BoothLogWriter writer;
  private final Path path;
  private final BoothLog log;
  private long nowNanos;

  WriterBench(Path path) {
    this(path, new LogQueue(1_000));
  }

  WriterBench(Path path, LogQueue queue) {
    this.path = path;
    this.queue = queue;
    log = BoothLog.open(path);
    LogClocks clocks =
        new LogClocks(
            () -> nowNanos,
            () -> LogEntries.FIRST_WALL_MILLIS + nowNanos / 1_000_000,
            ZoneOffset.UTC);
    // A step that has to wait makes time pass, so that nothing waits for ever.
    writer =
        new BoothLogWriter(
            log, "booth-3", queue, clocks, signIns::add, RoomMaker.NONE, () -> pass(0.05));
  }

  private void pass(double seconds) {
    nowNanos += Math.round(seconds * 1e9);
  }

  /** Offers entries, all of which must fit. */
  void offer(LogEntry... entries) {
    for (LogEntry entry : entries) {
      assertTrue(queue.offer(entry), "the queue is full");
    }
  }

  /** Half a second of steps: by then all that must be in the file is there. */
  void settle() {
    for (int i = 0; i < 10; i++) {
      writer.step();
    }
  }

  /** Statements of a test's own on the writer's connection. */
  void execute(String sql) throws Exception {
    log.connection().execute(sql);
  }

  ShiftRecords records() {
    try (BoothLogReader reader = BoothLogReader.open(path)) {
      return reader.read(0, Long.MAX_VALUE);
    }
  }

  LogCounts counts() {
    try (BoothLogReader reader = BoothLogReader.open(path)) {
      return reader.counts();
    }
  }

  /** Gives the file back without a word, as a power loss would. */
  void cutOff() {
    log.close();
  }

  @Override
  public void close() {
    writer.close();
  }
}
