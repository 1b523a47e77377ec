package org.boothlamp.boothlog;

import java.nio.file.Path;
import java.sql.SQLException;
import java.util.Queue;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.concurrent.locks.LockSupport;
import java.util.function.Consumer;
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
 * </pre>
 *
 * <p>A finished segment, a touch or an event is in the file a quarter of a second after it was
 * offered; of a running segment all but its last two seconds. While the disk refuses or is slow,
 * rows wait in memory, up to hours of welding, and are tried again; an event tells of it
 * afterwards.
 *
 * <p>Steps are called from one thread; {@link #note} and {@link #counters} from any.
 */
public final class BoothLogWriter implements Worker {

  private static final long IDLE_NANOS = 50_000_000L;

  /** How long the last rows are tried when the monitor ends; less than its thread is waited for. */
  private static final long LONGEST_CLOSE_NANOS = 3_000_000_000L;

  private record Note(EventKind kind, Moment moment, String detail) {}

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
    this(log, booth, queue, clocks, onSignIn, () -> LockSupport.parkNanos(IDLE_NANOS));
  }

  /** The same, with another way to wait between steps. */
  BoothLogWriter(
      BoothLog log,
      String booth,
      LogQueue queue,
      LogClocks clocks,
      Consumer<SignIn> onSignIn,
      Runnable idle) {
    this.log = log;
    this.queue = queue;
    this.clocks = clocks;
    this.idle = idle;
    batch = new LogBatch(log, clocks, counters);
    signIns = new SignInWatch(clocks, onSignIn);
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
    notes.add(new Note(kind, clocks.now(), detail));
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
      sorter.addEvent(note.kind(), note.moment(), 0, 0, note.detail());
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
