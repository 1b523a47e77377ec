package org.boothlamp.boothlog;

import static org.boothlamp.testing.LogEntries.ended;
import static org.boothlamp.testing.LogEntries.excursion;
import static org.boothlamp.testing.LogEntries.point;
import static org.boothlamp.testing.LogEntries.progress;
import static org.boothlamp.testing.LogEntries.started;
import static org.boothlamp.testing.LogEntries.touch;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.Statement;
import java.time.ZoneOffset;
import java.util.SplittableRandom;
import org.boothlamp.judging.Side;
import org.boothlamp.judging.Signal;
import org.boothlamp.monitor.EventKind;
import org.boothlamp.monitor.LogEntry;
import org.boothlamp.monitor.RoomMaker;
import org.boothlamp.monitor.SegmentEnd;
import org.boothlamp.monitor.WallClock;
import org.boothlamp.procedure.Quantity;
import org.boothlamp.testing.LogEntries;

/**
 * A log of a booth that the real writer fills as fast as it can: segments of 10 s with traces,
 * windows and now and then an excursion, and a touch between two.
 */
public final class FilledLog implements AutoCloseable {

  private static final double SEGMENT_SECONDS = 10;
  private static final int TRAINEES = 12;
  private static final int ENTRIES_A_STEP = 3_000;

  private final LogQueue queue = new LogQueue();
  private final BoothLogWriter writer;
  private final SplittableRandom random;
  private final Path path;
  private long nowNanos;
  private int segments;

  /** Begins the log of a booth; the next numbers if it has rows. */
  public FilledLog(Path path, String booth) {
    this.path = path;
    random = new SplittableRandom(booth.hashCode());
    LogClocks clocks =
        new LogClocks(
            () -> nowNanos,
            () -> LogEntries.FIRST_WALL_MILLIS + nowNanos / 1_000_000,
            ZoneOffset.UTC);
    writer =
        new BoothLogWriter(
            BoothLog.open(path),
            booth,
            queue,
            clocks,
            signIn -> {},
            history -> {},
            RoomMaker.NONE,
            () -> nowNanos += 50_000_000L);
    writer.note(EventKind.STARTED, "");
  }

  /** A whole log. */
  public static void write(Path path, String booth, int segments) {
    SignIns.add(path, "T-0", "S-3F-18", "fill", () -> LogEntries.FIRST_WALL_MILLIS);
    try (FilledLog log = new FilledLog(path, booth)) {
      log.weld(segments);
    }
  }

  /** More segments, each followed by a touch. */
  public void weld(int more) {
    for (int i = 0; i < more; i++) {
      double start = segments * 20.0;
      begin(start);
      offer(ended(start, SEGMENT_SECONDS, SegmentEnd.ARC_OFF));
      offer(touch(start + 12, 0.2, trainee(), segments % 9 == 0));
      segments++;
    }
    settle();
  }

  /** A segment that burns on. */
  public void burn() {
    begin(segments * 20.0);
    settle();
  }

  /** The segment that burns ends. */
  public void end() {
    offer(ended(segments * 20.0, SEGMENT_SECONDS, SegmentEnd.ARC_OFF));
    segments++;
    settle();
  }

  /** A fault that has not ended yet, or ends. */
  public void fault(double seconds) {
    offer(
        Double.isNaN(seconds)
            ? LogEntries.eventStarted(segments * 20.0, EventKind.NO_SAMPLES)
            : LogEntries.eventEnded(segments * 20.0, seconds, EventKind.NO_SAMPLES, 0));
    settle();
  }

  private void begin(double start) {
    offer(started(start, trainee()));
    for (int i = 0; i < SEGMENT_SECONDS * LogEntry.TRACE_HZ; i++) {
      double seconds = i / (double) LogEntry.TRACE_HZ;
      offer(
          point(
              start + seconds,
              1_000 + random.nextInt(300),
              2_000 + random.nextInt(600),
              Signal.GREEN));
      if (i % LogEntry.TRACE_HZ == LogEntry.TRACE_HZ - 1) {
        offer(progress(start, seconds));
      }
    }
    if (segments % 3 == 0) {
      offer(excursion(start + 5, 1.5, Quantity.VOLTS, Side.HIGH, 27 + random.nextDouble()));
    }
  }

  private String trainee() {
    return "T-" + segments % TRAINEES;
  }

  private void offer(LogEntry entry) {
    if (queue.size() > ENTRIES_A_STEP) {
      writer.step();
    }
    if (!queue.offer(entry)) {
      throw new AssertionError("the queue is full");
    }
  }

  /** By then everything offered is in the file. */
  private void settle() {
    for (int i = 0; i < 10; i++) {
      writer.step();
    }
  }

  /** Forgets a trainee. */
  public static int forget(Path path, String trainee) {
    return Forgetting.forget(path, trainee, WallClock.SYSTEM);
  }

  /** A statement of a test's own on a log that nobody has open. */
  public static void execute(Path path, String sql) throws Exception {
    try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + path);
        Statement statement = connection.createStatement()) {
      statement.executeUpdate(sql);
    }
  }

  /** Where it is. */
  public Path path() {
    return path;
  }

  @Override
  public void close() {
    writer.close();
  }
}
