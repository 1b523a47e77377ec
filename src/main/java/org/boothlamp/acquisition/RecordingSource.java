package org.boothlamp.acquisition;

import java.io.IOException;
import javax.sound.sampled.AudioInputStream;
import org.boothlamp.acquisition.SourceException.Reason;
import org.boothlamp.monitor.NanoClock;
import org.boothlamp.monitor.SampleBlock;
import org.boothlamp.monitor.SampleSource;
import org.boothlamp.monitor.SourceCounters;
import org.boothlamp.monitor.SourceFormat;

/**
 * Plays a recording, as fast as it is read or in real time.
 *
 * <p>Streams from the file through one block's worth of bytes. In real time pairs are due at fixed
 * moments counted from the first read, so waiting never adds up to drift, and whoever falls behind
 * gets full blocks until they have caught up. Confined to one thread.
 */
public final class RecordingSource implements SampleSource {

  private static final long NANOS_PER_SECOND = 1_000_000_000L;

  /** In real time pairs come in portions of 10 ms, as from a board. */
  private static final int PORTIONS_PER_SECOND = 100;

  private final Recording recording;
  private final SourceFormat format;
  private final SourceCounters counters = new SourceCounters();
  private final Pace pace;
  private final byte[] bytes = new byte[SampleBlock.CAPACITY * Frames.PAIR_BYTES];

  private AudioInputStream stream;
  private long nextIndex;
  private int nextGap;
  private boolean closed;

  private RecordingSource(Recording recording, Pace pace) {
    this.recording = recording;
    this.pace = pace;
    format =
        new SourceFormat(
            recording.pairsPerSecond(),
            Short.MIN_VALUE,
            Short.MAX_VALUE,
            recording.wav().getFileName().toString());
  }

  /** Full blocks without waiting; the block's time is counted from its pairs. */
  public static RecordingSource atFullSpeed(Recording recording) {
    return new RecordingSource(recording, new FullSpeed(recording.pairsPerSecond()));
  }

  /** Pairs when they are due by {@code clock}. */
  public static RecordingSource inRealTime(Recording recording, NanoClock clock, Pause pause) {
    return new RecordingSource(recording, new RealTime(recording.pairsPerSecond(), clock, pause));
  }

  @Override
  public Outcome read(SampleBlock block) {
    block.count = 0;
    skipGap();
    long left = closed ? 0 : recording.pairs() - nextIndex;
    if (left > 0) {
      int due = (int) Math.min(SampleBlock.CAPACITY, pace.pairsDue(nextIndex));
      fill(block, (int) Math.min(due, Math.min(left, pairsToGap())));
    }
    block.monotonicNanos = pace.nanosAfter(nextIndex);
    if (block.count > 0) {
      return Outcome.PAIRS;
    }
    return left > 0 ? Outcome.NOTHING : Outcome.END;
  }

  /** Missing pairs are passed over, as they were when they did not arrive. */
  private void skipGap() {
    if (!closed && pairsToGap() == 0) {
      PairGap gap = recording.gaps().get(nextGap++);
      long end = Math.min(gap.end(), recording.pairs());
      for (long at = nextIndex; at < end; at += SampleBlock.CAPACITY) {
        readBytes((int) Math.min(end - at, SampleBlock.CAPACITY) * Frames.PAIR_BYTES);
      }
      counters.lostPairs += end - nextIndex;
      nextIndex = end;
    }
  }

  private long pairsToGap() {
    return nextGap < recording.gaps().size()
        ? Math.max(0, recording.gaps().get(nextGap).firstPair() - nextIndex)
        : Long.MAX_VALUE;
  }

  private void fill(SampleBlock block, int count) {
    if (count <= 0) {
      return;
    }
    readBytes(count * Frames.PAIR_BYTES);
    for (int pair = 0; pair < count; pair++) {
      int at = pair * Frames.PAIR_BYTES;
      block.current[pair] = (short) Frames.getU16(bytes, at);
      block.voltage[pair] = (short) Frames.getU16(bytes, at + 2);
    }
    block.count = count;
    block.firstIndex = nextIndex;
    nextIndex += count;
  }

  private void readBytes(int length) {
    try {
      if (stream == null) {
        stream = Recording.openStream(recording.wav());
      }
      int held = 0;
      while (held < length) {
        int count = stream.read(bytes, held, length - held);
        if (count <= 0) {
          throw shorter(held);
        }
        held += count;
      }
    } catch (IOException unreadable) {
      throw Recording.unreadable(recording.wav(), unreadable);
    }
  }

  private SourceException shorter(int heldBytes) {
    return new SourceException(
        Reason.FAILED,
        recording.wav().toString(),
        "the recording became shorter while it was read: it ends after pair "
            + (nextIndex + heldBytes / Frames.PAIR_BYTES)
            + " of "
            + recording.pairs(),
        "let nothing write to the file meanwhile");
  }

  @Override
  public SourceFormat format() {
    return format;
  }

  @Override
  public SourceCounters counters() {
    return counters;
  }

  @Override
  public void close() {
    closed = true;
    if (stream != null) {
      try {
        stream.close();
      } catch (IOException unreadable) {
        throw Recording.unreadable(recording.wav(), unreadable);
      } finally {
        stream = null;
      }
    }
  }

  /** When pairs are due. */
  private interface Pace {

    /** Pairs due from {@code nextIndex} on, after waiting for them for a while. */
    long pairsDue(long nextIndex);

    /** Time to put on a block that ends before {@code nextIndex}. */
    long nanosAfter(long nextIndex);
  }

  /** Everything is due; time is what the pairs say. */
  private record FullSpeed(int pairsPerSecond) implements Pace {

    @Override
    public long pairsDue(long nextIndex) {
      return SampleBlock.CAPACITY;
    }

    @Override
    public long nanosAfter(long nextIndex) {
      return nanosOfPairs(nextIndex, pairsPerSecond);
    }
  }

  private static long nanosOfPairs(long pairs, int pairsPerSecond) {
    return pairs / pairsPerSecond * NANOS_PER_SECOND
        + pairs % pairsPerSecond * NANOS_PER_SECOND / pairsPerSecond;
  }

  /** A pair is due when its time after the first read has come. */
  private static final class RealTime implements Pace {

    private final int pairsPerSecond;
    private final int portionPairs;
    private final NanoClock clock;
    private final Pause pause;
    private boolean started;
    private long startNanos;

    RealTime(int pairsPerSecond, NanoClock clock, Pause pause) {
      this.pairsPerSecond = pairsPerSecond;
      portionPairs = Math.max(1, pairsPerSecond / PORTIONS_PER_SECOND);
      this.clock = clock;
      this.pause = pause;
    }

    @Override
    public long pairsDue(long nextIndex) {
      if (!started) {
        started = true;
        startNanos = clock.nanoTime();
      }
      long dueNanos = startNanos + nanosOfPairs(nextIndex + portionPairs, pairsPerSecond);
      long waitNanos = dueNanos - clock.nanoTime();
      if (waitNanos > 0) {
        pause.pauseNanos(Math.min(waitNanos, LONGEST_WAIT_NANOS));
      }
      return pairsBy(clock.nanoTime()) - nextIndex;
    }

    private long pairsBy(long nanos) {
      long elapsed = nanos - startNanos;
      return elapsed / NANOS_PER_SECOND * pairsPerSecond
          + elapsed % NANOS_PER_SECOND * pairsPerSecond / NANOS_PER_SECOND;
    }

    @Override
    public long nanosAfter(long nextIndex) {
      return clock.nanoTime();
    }
  }
}
