package org.boothlamp.acquisition;

import java.io.IOException;
import java.util.concurrent.locks.LockSupport;
import java.util.function.BiConsumer;
import org.boothlamp.monitor.EventKind;
import org.boothlamp.monitor.NanoClock;
import org.boothlamp.monitor.Worker;
import org.tinylog.Logger;

/**
 * Keeps the last segments at full rate.
 *
 * <pre>
 *  sampler --onPairs, onEntry--&gt; PairRing --marks, pairs--&gt; SegmentRecorder --&gt; OpenRecording
 *                                                              |                    |
 *                                        recordings stopped &lt;--+                    v
 *                                                                            RecordingFolder
 * </pre>
 *
 * <p>A disk that is slow only fills the ring; what then finds no room is a gap of the recording,
 * and said. A disk that refuses ends the recording with one event; the next segment from a minute
 * later on is tried again. Neither reaches the sampler, the lamp or the log. Steps are called from
 * one thread.
 */
public final class SegmentRecorder implements Worker {

  private static final long IDLE_NANOS = 50_000_000L;

  /** From this length on a contact has hardly been a touch, s. */
  private static final int LIKELY_SEGMENT_SECONDS = 1;

  /** How long the half second after a segment is waited for: the source may have fallen silent. */
  private static final long LONGEST_TAIL_NANOS = 2_000_000_000L;

  /** After a failure nothing is begun for so long. */
  private static final long PAUSE_NANOS = 60_000_000_000L;

  private final PairRing ring;
  private final RecordingFolder folder;
  private final String booth;
  private final String machine;
  private final NanoClock clock;
  private final BiConsumer<EventKind, String> events;
  private final Runnable idle;
  private final PairSpans spans = new PairSpans();
  private final RingMark mark = new RingMark();
  private OpenRecording open;
  private long tailUntilNanos;
  private long previousEndSlot;
  private boolean failed;
  private long pausedUntilNanos;

  /**
   * A recorder that has done nothing yet.
   *
   * @param booth booth id
   * @param machineBoot the kernel's boot id, or null where it tells none
   * @param events told of what the log should hold, on the recorder's thread
   */
  public SegmentRecorder(
      PairRing ring,
      RecordingFolder folder,
      String booth,
      String machineBoot,
      NanoClock clock,
      BiConsumer<EventKind, String> events) {
    this(ring, folder, booth, machineBoot, clock, events, () -> LockSupport.parkNanos(IDLE_NANOS));
  }

  /** The same, with another way to wait between steps. */
  SegmentRecorder(
      PairRing ring,
      RecordingFolder folder,
      String booth,
      String machineBoot,
      NanoClock clock,
      BiConsumer<EventKind, String> events,
      Runnable idle) {
    this.ring = ring;
    this.folder = folder;
    this.booth = booth;
    machine = RecordingName.machine(machineBoot);
    this.clock = clock;
    this.events = events;
    this.idle = idle;
    folder.setPresentMachine(machine);
  }

  @Override
  public String roleName() {
    return "recorder";
  }

  @Override
  public void start() {
    try {
      folder.prepare();
    } catch (IOException failure) {
      stop(failure.toString());
    }
  }

  @Override
  public boolean step() {
    work();
    idle.run();
    return true;
  }

  /** Takes everything that is there. */
  void work() {
    long written = ring.written();
    while (ring.poll(mark)) {
      onMark();
    }
    if (open != null) {
      advance(written);
    }
    releaseUpTo(written);
  }

  private void onMark() {
    switch (mark.kind) {
      case JUMP -> jump();
      case CONTACT -> begin();
      case TOUCH_ENDED -> {
        previousEndSlot = mark.slot;
        discard();
      }
      case SEGMENT_ENDED -> {
        previousEndSlot = mark.slot;
        end();
      }
    }
  }

  /** At another rate slots have other numbers. */
  private void jump() {
    PairSpans.Span last = spans.last();
    if (last != null && last.pairsPerSecond() != mark.pairsPerSecond) {
      previousEndSlot = 0;
    }
    spans.add(mark);
  }

  private void begin() {
    if (open != null) {
      open.span().endBefore(mark.slot);
      advance(ring.written());
      finish();
    }
    if (spans.last() == null || failed && clock.nanoTime() - pausedUntilNanos < 0) {
      return;
    }
    SegmentSpan span = new SegmentSpan(spans.last().pairsPerSecond(), mark.slot, previousEndSlot);
    open = new OpenRecording(folder, booth, machine, mark, span, ring.released());
  }

  private void end() {
    if (open != null) {
      open.end(mark);
      tailUntilNanos = clock.nanoTime() + LONGEST_TAIL_NANOS;
    }
  }

  private void advance(long upTo) {
    if (open == null || upTo <= open.position() || !isWorthAFile(upTo)) {
      finishIfOver();
      return;
    }
    try {
      open.writeUpTo(upTo, ring, spans);
    } catch (IOException | SourceException failure) {
      giveUp(failure);
    }
    finishIfOver();
  }

  private boolean isWorthAFile(long upTo) {
    if (open.span().isEnded()) {
      return true;
    }
    long index = spans.at(upTo - 1).indexAt(upTo - 1);
    int pairsPerSecond = open.span().pairsPerSecond();
    return index - open.span().contact() > (long) LIKELY_SEGMENT_SECONDS * pairsPerSecond;
  }

  private void finishIfOver() {
    if (open != null
        && open.span().isEnded()
        && (open.isComplete() || clock.nanoTime() - tailUntilNanos >= 0)) {
      finish();
    }
  }

  /** A segment whose end was never told is kept as it is. */
  private void finish() {
    if (open == null) {
      return;
    }
    try {
      open.finish();
      sayOverrun();
      open = null;
      sayResumed();
    } catch (IOException | SourceException failure) {
      giveUp(failure);
    }
  }

  private void sayOverrun() {
    long pairs = open.overrunPairs();
    if (pairs > 0) {
      String detail = pairs + " pairs were not recorded: the disk was too slow";
      Logger.warn("recording {}: {}", open.name().wav(), detail);
      events.accept(EventKind.RECORDING_GAP, open.name().wav() + ": " + detail);
    }
  }

  private void sayResumed() {
    if (failed) {
      failed = false;
      Logger.info("recordings {}: kept again", folder.path());
      events.accept(EventKind.RECORDINGS_RESUMED, "");
    }
  }

  private void discard() {
    if (open != null) {
      OpenRecording touch = open;
      open = null;
      tryToDiscard(touch);
    }
  }

  private static void tryToDiscard(OpenRecording recording) {
    try {
      recording.discard();
    } catch (IOException | SourceException failure) {
      Logger.warn(
          "recording {}: what is left of it could not be deleted: {}",
          recording.name().wav(),
          failure.getMessage());
    }
  }

  private void giveUp(Exception failure) {
    discard();
    stop(failure instanceof SourceException known ? known.getMessage() : failure.toString());
  }

  /** Says it once for a spell of failures. */
  private void stop(String why) {
    pausedUntilNanos = clock.nanoTime() + PAUSE_NANOS;
    if (!failed) {
      failed = true;
      Logger.error("no raw recordings are kept for now: {}", why);
      events.accept(EventKind.RECORDINGS_STOPPED, why);
    }
  }

  /** A contact that is not told of yet may reach back so far. */
  private void releaseUpTo(long written) {
    PairSpans.Span last = spans.last();
    if (last == null) {
      return;
    }
    long kept = SegmentSpan.mostPairsBefore(last.pairsPerSecond());
    long upTo = open == null ? written - kept : Math.min(open.position(), written - kept);
    ring.release(Math.max(ring.released(), upTo));
    spans.forgetBefore(ring.released());
  }

  /** Ends what is open with the pairs that are there. */
  @Override
  public void close() {
    work();
    if (open != null && open.span().isEnded()) {
      finish();
    } else {
      discard();
    }
  }
}
