package org.boothlamp.boothlog;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import org.boothlamp.calibration.CalibrationHistory;
import org.boothlamp.monitor.BoothClock;
import org.boothlamp.monitor.LogEntry;
import org.boothlamp.monitor.NanoClock;
import org.boothlamp.monitor.RoomMaker;
import org.boothlamp.monitor.WallClock;
import org.boothlamp.report.ShiftRecords;
import org.boothlamp.testing.LogEntries;

/** A writer on a real file whose steps and clocks are turned by hand. */
final class WriterBench implements AutoCloseable {

  final List<SignIn> signIns = new ArrayList<>();
  final List<CalibrationHistory> calibrations = new ArrayList<>();
  final LogQueue queue;
  final BoothLogWriter writer;
  private final Path path;
  private final BoothLog log;
  private long nowNanos;

  /** A machine's clock that a test sets. */
  static final class MachineClock implements WallClock {
    boolean trusted;
    private NanoClock nano = () -> 0;
    private long baseMillis;

    MachineClock(long wallMillis) {
      baseMillis = wallMillis;
    }

    void moveMillis(long byMillis) {
      baseMillis += byMillis;
    }

    @Override
    public long epochMillis() {
      return baseMillis + nano.nanoTime() / 1_000_000;
    }
  }

  WriterBench(Path path) {
    this(path, new LogQueue(1_000));
  }

  WriterBench(Path path, LogQueue queue) {
    this(path, queue, RoomMaker.NONE);
  }

  WriterBench(Path path, LogQueue queue, RoomMaker roomMaker) {
    this.path = path;
    this.queue = queue;
    log = BoothLog.openPatiently(path);
    WallClock wall = () -> LogEntries.FIRST_WALL_MILLIS + nowNanos / 1_000_000;
    writer = writer(new LogClocks(() -> nowNanos, wall, ZoneOffset.UTC), roomMaker);
  }

  private WriterBench(Path path, MachineClock machine) {
    this.path = path;
    queue = new LogQueue(1_000);
    log = BoothLog.openPatiently(path);
    machine.nano = () -> nowNanos;
    BoothClock kept = new BoothClock(machine.nano, machine);
    writer =
        writer(
            new LogClocks(machine.nano, kept, ZoneOffset.UTC, kept, () -> machine.trusted),
            RoomMaker.NONE);
  }

  /** A writer whose booth has no clock of its own: the machine's may be wrong and be set. */
  static WriterBench withMachineClock(Path path, MachineClock machine) {
    return new WriterBench(path, machine);
  }

  /** A step that has to wait makes time pass, so that nothing waits for ever. */
  private BoothLogWriter writer(LogClocks clocks, RoomMaker roomMaker) {
    return new BoothLogWriter(
        log,
        "booth-3",
        queue,
        clocks,
        signIns::add,
        calibrations::add,
        roomMaker,
        () -> pass(0.05));
  }

  /** Time passes; nothing is stepped. */
  void pass(double seconds) {
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
    settleFor(0.5);
  }

  /** Seconds of steps. */
  void settleFor(double seconds) {
    for (int step = 0; step < 20 * seconds; step++) {
      writer.step();
    }
  }

  /** Time passes, and then a second of steps. */
  void passAndSettle(double seconds) {
    pass(seconds);
    settleFor(1);
  }

  /** Somebody signs in now. */
  void addSignIn(String trainee) {
    SignIns.add(path, trainee, "S-1", "fill", () -> LogEntries.FIRST_WALL_MILLIS);
  }

  /** The only value of a query on the writer's connection, as text. */
  String text(String sql) throws Exception {
    return log.connection().text(sql);
  }

  /** Statements of a test's own on the writer's connection. */
  void execute(String sql) throws Exception {
    log.connection().execute(sql);
  }

  /** The only value of a query on the writer's connection. */
  long number(String sql) throws Exception {
    return log.connection().number(sql);
  }

  /** The next use of the file opens it again. */
  void dropConnection() {
    log.dropConnection(new IllegalStateException("dropped by a test"));
  }

  BoothLogReader reader() {
    return BoothLogReader.open(path);
  }

  ShiftRecords records() {
    try (BoothLogReader reader = reader()) {
      return reader.read(0, Long.MAX_VALUE);
    }
  }

  LogCounts counts() {
    try (BoothLogReader reader = reader()) {
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
