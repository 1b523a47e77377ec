package org.boothlamp.boothlog;

import java.nio.file.Path;
import java.util.Queue;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.concurrent.locks.LockSupport;
import java.util.function.BiConsumer;
import java.util.function.Consumer;
import org.boothlamp.calibration.CalibrationHistory;
import org.boothlamp.monitor.EventKind;
import org.boothlamp.monitor.LogEntry;
import org.boothlamp.monitor.RoomMaker;
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
 *  booth.db &lt;--delete-- Retention &lt;--asks-- SentRows
 * </pre>
 *
 * <p>A finished segment is in the file as soon as it was taken from the queue, of a running one all
 * but its last two seconds; a touch or an event waits a quarter of a second, or, while an arc
 * burns, for the next save. A file that cannot be opened, is damaged, or is on a full disk stops
 * nothing: rows wait in memory, up to hours of welding, and are tried again; an event tells of it
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
  private final LogRescue rescue;
  private final ClockWatch clockWatch;
  private final SignInWatch signIns;
  private final CalibrationWatch calibrations;
  private final StallWatch stalls = new StallWatch();
  private final LossWatch losses;
  private final LogStart start;
  private Retention retention;
  private long unreadableEntries;

  /**
   * A writer that has not written yet, on a disk that has nothing but the log.
   *
   * @param log closed by this writer when it is closed
   * @param booth booth id
   * @param queue where the sampler's entries come from
   * @param clocks what time it is
   * @param onSignIn told of sign-ins on the writer's thread; at the start, of the latest of today
   */
  public BoothLogWriter(
      BoothLog log, String booth, LogQueue queue, LogClocks clocks, Consumer<SignIn> onSignIn) {
    this(log, booth, queue, clocks, onSignIn, history -> {}, RoomMaker.NONE);
  }

  /**
   * The same, that tells of calibrations too and makes room on a full disk.
   *
   * @param onCalibrations told of all calibrations on the writer's thread: at the start, when
   *     another process wrote one or withdrew one, and once a minute
   * @param roomMaker asked when the disk is full
   */
  public BoothLogWriter(
      BoothLog log,
      String booth,
      LogQueue queue,
      LogClocks clocks,
      Consumer<SignIn> onSignIn,
      Consumer<CalibrationHistory> onCalibrations,
      RoomMaker roomMaker) {
    this(
        log,
        booth,
        queue,
        clocks,
        onSignIn,
        onCalibrations,
        roomMaker,
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
      RoomMaker roomMaker,
      Runnable idle) {
    this.log = log;
    this.queue = queue;
    this.clocks = clocks;
    this.idle = idle;
    String machineBoot = BootRow.machineBootNow();
    start = new LogStart(clocks.kept());
    batch = new LogBatch(log, start, clocks, counters, roomMaker);
    sorter = new EntrySorter(batch, start);
    Moment now = clocks.now();
    BootRow boot = new BootRow(booth, now.wallMillis(), now.monotonicNanos(), machineBoot);
    rescue = new LogRescue(log, start, clocks, batch, sorter, counters, boot);
    clockWatch = new ClockWatch(clocks, start, batch, sorter, machineBoot);
    signIns = new SignInWatch(clocks, start, machineBoot, onSignIn);
    calibrations = new CalibrationWatch(clocks, onCalibrations);
    losses = new LossWatch(queue);
    keepFor(RetentionRule.FOR_EVER, SentRows.NOT_SENT_ON);
  }

  /**
   * Lets rows become no older than this; to be called before the first step.
   *
   * @param sent which rows have been sent on: others are kept
   */
  public void keepFor(RetentionRule rule, SentRows sent) {
    retention = new Retention(rule, sent, clocks, start, sorter);
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

  /** Where the log is. */
  public Path path() {
    return log.path();
  }

  @Override
  public boolean step() {
    clockWatch.poll();
    takeAll();
    if (rescue.isReady()) {
      signIns.poll(log);
      calibrations.poll(log);
      if (batch.isDue()) {
        commit();
      }
      rescue.salvageSome();
      if (batch.isEmpty()) {
        retention.poll(log);
      }
    } else {
      stalls.onNotReady(clocks.now());
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
      counters.trouble = batch.failure().getMessage();
      stalls.onFailure(log, batch.failure());
      rescue.onFailedCommit(batch.failure());
      return false;
    }
    counters.trouble = null;
    stalls.onSuccess(log, clocks.now(), sorter, counters.givenUpTraceRows);
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
      if (rescue.isReady()) {
        batch.hurry();
      }
      commitLast();
    } finally {
      rescue.close();
      log.close();
    }
  }

  private void commitLast() {
    long begunNanos = clocks.nano().nanoTime();
    while (!batch.isEmpty()) {
      if (!rescue.isReady() || !commit()) {
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
