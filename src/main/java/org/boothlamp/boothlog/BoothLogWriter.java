package org.boothlamp.boothlog;

import java.nio.file.Path;
import java.sql.SQLException;
import java.util.Queue;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.concurrent.locks.LockSupport;
import java.util.function.BiConsumer;
import java.util.function.Consumer;
import org.boothlamp.calibration.CalibrationHistory;
import org.boothlamp.monitor.EventKind;
import org.boothlamp.monitor.LogEntry;
import org.boothlamp.monitor.SegmentEnd;
import org.boothlamp.monitor.Worker;
import org.tinylog.Logger;

/**
 * The only writer of segments, touches and events.
 *
 * <pre>
 *  sampler --offer--&gt; LogQueue --poll--&gt; EntrySorter --rows--&gt; LogBatch --commit--&gt; booth.db
 *  others --note---&gt; notes -------------------^
 *  booth.db --sign_in rows--&gt; SignInWatch --&gt; onSignIn
 *  booth.db --calibrations--&gt; CalibrationWatch --&gt; onCalibrations
 * </pre>
 *
 * <p>A finished segment, a touch or an event is in the file a quarter of a second after it was
 * offered; of a running segment all but its last two seconds. While the disk refuses or is slow,
 * rows wait in memory, up to hours of welding, and are tried again; an event tells of it
 * afterwards.
 *
 * <p>Steps are called from one thread; the notes and {@link #counters} from any.
 */
public final class BoothLogWriter implements Worker {

  private static final long IDLE_NANOS = 50_000_000L;

  /** How long the last rows are tried when the monitor ends; less than its thread is waited for. */
  private static final long LONGEST_CLOSE_NANOS = 3_000_000_000L;

  /** Something to be told to the sorter, as of a moment. */
  private record Note(Moment moment, BiConsumer<EntrySorter, Moment> telling) {}

  private final BoothLog log;
  private final LogQueue queue;
  private final LogClocks clocks;
  private final Runnable idle;
  private final BoothLogCounters counters = new BoothLogCounters();
  private final Queue<Note> notes = new ConcurrentLinkedQueue<>();
  private final LogEntry entry = new LogEntry();
  private final LogBatch batch;
  private final EntrySorter sorter;
  private final SignInWatch signIns;
  private final CalibrationWatch calibrations;
  private final StallWatch stalls = new StallWatch();
  private final LossWatch losses;
  private long unreadableEntries;

  /**
   * A writer that has not written yet.
   *
   * @param log closed by this writer when it is closed
   * @param booth booth id
   * @param queue where the sampler's entries come from
   * @param clocks what time it is
   * @param onSignIn told of sign-ins on the writer's thread; at the start, of the latest of today
   * @throws BoothLogException if the log cannot be read
   */
  public BoothLogWriter(
      BoothLog log, String booth, LogQueue queue, LogClocks clocks, Consumer<SignIn> onSignIn) {
    this(log, booth, queue, clocks, onSignIn, history -> {});
  }

  /**
   * The same, that tells of calibrations too.
   *
   * @param onCalibrations told of all calibrations on the writer's thread: at the start, when
   *     another process wrote one or withdrew one, and once a minute
   */
  public BoothLogWriter(
      BoothLog log,
      String booth,
      LogQueue queue,
      LogClocks clocks,
      Consumer<SignIn> onSignIn,
      Consumer<CalibrationHistory> onCalibrations) {
    this(
        log,
        booth,
        queue,
        clocks,
        onSignIn,
        onCalibrations,
        () -> LockSupport.parkNanos(IDLE_NANOS));
  }

  /** The same, with another way to wait between steps. */
  BoothLogWriter(
      BoothLog log,
      String booth,
      LogQueue queue,
      LogClocks clocks,
      Consumer<SignIn> onSignIn,
      Consumer<CalibrationHistory> onCalibrations,
      Runnable idle) {
    this.log = log;
    this.queue = queue;
    this.clocks = clocks;
    this.idle = idle;
    batch = new LogBatch(log, clocks, counters);
    signIns = new SignInWatch(clocks, onSignIn);
    calibrations = new CalibrationWatch(clocks, onCalibrations);
    losses = new LossWatch(queue);
    sorter = begin(booth);
  }

  /** Puts this start of the monitor, and what the one before left open, in front of all else. */
  private EntrySorter begin(String booth) {
    try {
      RowNumbers numbers = RowNumbers.after(log.connection());
      Moment now = clocks.now();
      batch.add(
          new BootRow(
              numbers.boot(),
              booth,
              now.wallMillis(),
              now.monotonicNanos(),
              BootRow.machineBootNow()));
      for (LeftOpenSegment segment : LeftOpenSegment.in(log.connection())) {
        batch.add(segment);
        batch.add(segment.event(numbers.nextEvent()));
      }
      return new EntrySorter(batch, numbers);
    } catch (SQLException failure) {
      throw LogFile.explain(log.path(), failure);
    }
  }

  @Override
  public String roleName() {
    return "boothlog";
  }

  /**
   * Adds an event that the sampler does not know of, as of now.
   *
   * @param detail more in words, may be empty
   */
  public void note(EventKind kind, String detail) {
    note((to, moment) -> to.addEvent(kind, moment, 0, 0, detail));
  }

  /** Begins an event that the sampler does not know of, as of now; {@link #noteEnd} ends it. */
  public void noteBegin(EventKind kind, String detail) {
    note((to, moment) -> to.beginEvent(kind, moment, detail));
  }

  /**
   * Ends an event that was begun so, as of now.
   *
   * @param count how many, where the event counts something; else 0
   */
  public void noteEnd(EventKind kind, long count) {
    note((to, moment) -> to.endEvent(kind, moment, count));
  }

  private void note(BiConsumer<EntrySorter, Moment> telling) {
    notes.add(new Note(clocks.now(), telling));
  }

  /** What the writer says of itself. */
  public BoothLogCounters counters() {
    return counters;
  }

  /** Number of this start of the monitor: the rows that are written carry it. */
  public long boot() {
    return sorter.boot();
  }

  /** Where the log is. */
  public Path path() {
    return log.path();
  }

  @Override
  public boolean step() {
    takeAll();
    signIns.poll(log);
    calibrations.poll(log);
    if (batch.isDue()) {
      commit();
    }
    idle.run();
    return true;
  }

  private void takeAll() {
    takeNotes();
    takeEntries();
    losses.look(clocks, sorter);
  }

  private void takeNotes() {
    for (Note note = notes.poll(); note != null; note = notes.poll()) {
      note.telling().accept(sorter, note.moment());
    }
  }

  private void takeEntries() {
    while (!batch.isFull() && queue.poll(entry)) {
      take();
    }
    counters.strayEntries = sorter.strayEntries() + unreadableEntries;
  }

  private void take() {
    try {
      sorter.accept(entry);
    } catch (RuntimeException failure) {
      unreadableEntries++;
      Logger.error(failure, "booth log {}: an entry is left out: {}", log.path(), entry.kind);
    }
  }

  private boolean commit() {
    stalls.onTry(clocks.now());
    if (!batch.commit()) {
      stalls.onFailure(log, batch.failure());
      return false;
    }
    stalls.onSuccess(log, clocks.now(), sorter);
    return true;
  }

  /**
   * Writes what still waits and closes the log. A segment that still runs ends here.
   *
   * @throws BoothLogException if rows could not be written within 3 s: they are lost
   */
  @Override
  public void close() {
    try {
      takeAll();
      sorter.endRunning(SegmentEnd.STOPPED);
      losses.finish(clocks, sorter);
      commitLast();
    } finally {
      log.close();
    }
  }

  private void commitLast() {
    long begunNanos = clocks.nano().nanoTime();
    while (!batch.isEmpty()) {
      if (!commit()) {
        giveUpAfter(begunNanos);
        idle.run();
      }
    }
  }

  private void giveUpAfter(long begunNanos) {
    if (clocks.nano().nanoTime() - begunNanos > LONGEST_CLOSE_NANOS) {
      throw new BoothLogException(
          batch.size() + " rows could not be written before the end and are lost",
          log.path(),
          "check the disk, its free space, and what else has the log open",
          batch.failure());
    }
  }
}
