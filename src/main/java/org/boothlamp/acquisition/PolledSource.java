package org.boothlamp.acquisition;

import java.util.Locale;
import org.boothlamp.monitor.NanoClock;
import org.boothlamp.monitor.SampleBlock;
import org.boothlamp.monitor.SampleSource;
import org.boothlamp.monitor.SourceCounters;
import org.boothlamp.monitor.SourceFormat;
import org.tinylog.Logger;

/**
 * A source that has to ask its converter for every pair, at the right moment.
 *
 * <p>Pair k is due k periods after the first; a read waits for each deadline in turn, for 10 ms of
 * pairs. Deadlines are absolute, so being late once does not shift what follows. The index of a
 * pair is that of the last deadline passed when its conversion was started: a pair that is less
 * than a period late is taken late, one that is more than that is lost, and shows as a jump of the
 * index. A bus that is too slow for the rate therefore loses pairs, and {@link #rateTrouble} says
 * so.
 *
 * <p>A failure delivers nothing for the pair it hit. The converter is let go and opened again every
 * 0.5 s; the index goes on by the clock.
 *
 * <p>The waiting is done by {@link DeadlinePause}: where transfers leave less than 70 µs of a
 * period it spins, and the thread takes a whole core; below 5,000 pairs a second it takes a part of
 * one. Creates no objects while all is well, apart from what the bus's library does.
 *
 * <p>Confined to one thread, but {@link #trouble} and {@link #performance} may be asked from any.
 */
abstract class PolledSource implements SampleSource {

  private static final long RETRY_NANOS = 500_000_000L;

  /** Leaves a fifth of the longest wait to the scheduler. */
  private static final long WAIT_NANOS = LONGEST_WAIT_NANOS / 5 * 4;

  private static final int BLOCKS_PER_SECOND = 100;
  private static final long NANOS_PER_SECOND = 1_000_000_000L;

  private final SourceFormat format;
  private final int pairsPerSecond;
  private final int blockPairs;
  private final NanoClock clock;
  private final Pause pause;
  private final SourceCounters counters = new SourceCounters();
  private final SamplingJitter jitter;

  private boolean connected;
  private boolean tried;
  private long lastTryNanos;

  /** True from connecting until the first pair has come. */
  private boolean unproven;

  /** True until the first pair after an interruption: what is missing before it is no lost pair. */
  private boolean resuming;

  private boolean closed;
  private long startNanos;
  private long nextIndex;
  private volatile SourceException failure;

  PolledSource(SourceFormat format, NanoClock clock, Pause pause) {
    this.format = format;
    this.clock = clock;
    this.pause = pause;
    pairsPerSecond = format.pairsPerSecond();
    jitter = new SamplingJitter(pairsPerSecond);
    blockPairs = Math.max(1, pairsPerSecond / BLOCKS_PER_SECOND);
  }

  /**
   * Opens the converter.
   *
   * @throws SourceException if it cannot be opened; then nothing is left open
   */
  abstract void connect();

  /** Lets go of the converter whatever its state; must not throw. */
  abstract void disconnect();

  /**
   * Converts both channels now and writes their counts at {@code at}.
   *
   * @throws SourceException if the bus or the converter failed; the counts are then not used
   */
  abstract void takePair(short[] current, short[] voltage, int at);

  /**
   * Opens the converter now, before the first read, to learn whether it can be.
   *
   * @throws SourceException if it cannot, with the next move
   */
  public final void open() {
    tryToConnect();
    if (failure != null) {
      throw failure;
    }
  }

  @Override
  public final Outcome read(SampleBlock block) {
    block.count = 0;
    if (closed) {
      block.monotonicNanos = clock.nanoTime();
      return Outcome.END;
    }
    if (isConnected()) {
      sample(block);
    } else {
      pause.pauseNanos(WAIT_NANOS);
    }
    block.monotonicNanos = clock.nanoTime();
    return block.count > 0 ? Outcome.PAIRS : Outcome.NOTHING;
  }

  private boolean isConnected() {
    boolean due = !tried || clock.nanoTime() - lastTryNanos >= RETRY_NANOS;
    if (!connected && due) {
      tryToConnect();
    }
    return connected;
  }

  private void tryToConnect() {
    tried = true;
    lastTryNanos = clock.nanoTime();
    try {
      connect();
      connected = true;
      unproven = true;
    } catch (SourceException refused) {
      tell(refused);
    }
  }

  private void sample(SampleBlock block) {
    long start = clock.nanoTime();
    if (nextIndex == 0) {
      startNanos = start;
    }
    try {
      boolean goOn = true;
      while (goOn && block.count < blockPairs) {
        goOn = takeNext(block) && clock.nanoTime() - start < WAIT_NANOS;
      }
    } catch (SourceException failed) {
      letGo(failed);
    }
  }

  /** Takes the next pair when it is due; false if it is lost and the block has to end before it. */
  private boolean takeNext(SampleBlock block) {
    long deadline = deadlineOf(nextIndex);
    long now = awaitDeadline(deadline);
    long due = indexAt(now);
    if (due > nextIndex && block.count > 0) {
      return false;
    }
    takePair(block.current, block.voltage, block.count);
    if (unproven) {
      onProven();
    }
    count(now, now - deadline, due - nextIndex);
    if (block.count == 0) {
      block.firstIndex = due;
    }
    block.count++;
    nextIndex = due + 1;
    return true;
  }

  private long awaitDeadline(long deadline) {
    long now = clock.nanoTime();
    while (deadline - now > 0) {
      pause.pauseNanos(deadline - now);
      now = clock.nanoTime();
    }
    return now;
  }

  private void count(long nowNanos, long lateNanos, long lost) {
    if (resuming) {
      resuming = false;
      return;
    }
    counters.lostPairs += lost;
    jitter.add(nowNanos, lateNanos);
  }

  /** Seconds and rest are counted apart, or the product would overflow after some weeks. */
  private long deadlineOf(long index) {
    long rest = index % pairsPerSecond * NANOS_PER_SECOND;
    return startNanos
        + index / pairsPerSecond * NANOS_PER_SECOND
        + (rest + pairsPerSecond - 1) / pairsPerSecond;
  }

  private long indexAt(long nanos) {
    long elapsed = nanos - startNanos;
    return elapsed / NANOS_PER_SECOND * pairsPerSecond
        + elapsed % NANOS_PER_SECOND * pairsPerSecond / NANOS_PER_SECOND;
  }

  private void onProven() {
    unproven = false;
    if (nextIndex > 0) {
      counters.reconnects++;
    }
    tell(null);
  }

  private void letGo(SourceException failed) {
    connected = false;
    resuming = nextIndex > 0;
    jitter.interrupt();
    disconnect();
    tell(failed);
  }

  /** Logs each change once: tries go on twice a second, for days if need be. */
  private void tell(SourceException now) {
    String before = failure == null ? "" : failure.getMessage();
    if (now == null) {
      Logger.info("{} answers", format.device());
    } else if (!now.getMessage().equals(before)) {
      Logger.warn("{}; trying again twice a second", now.getMessage());
    }
    failure = now;
  }

  /** One more frame that cannot have come from the converter. */
  final void countBadFrame() {
    counters.badFrames++;
  }

  /** Why no pairs come, or null. */
  public final SourceException problem() {
    return failure;
  }

  @Override
  public final String trouble() {
    SourceException problem = failure;
    if (problem != null) {
      return problem.getMessage();
    }
    return rateTrouble();
  }

  @Override
  public final String rateTrouble() {
    if (!jitter.isSlow()) {
      return null;
    }
    return String.format(
        Locale.ROOT,
        "%s: asked for %d pairs/s, achieved %s; lower source.pairs_per_second",
        format.device(),
        pairsPerSecond,
        jitter.achievedWords());
  }

  @Override
  public final boolean measuresRate() {
    return true;
  }

  @Override
  public final String performance() {
    return jitter.words(counters.lostPairs);
  }

  /** How late the pairs are taken. */
  public final SamplingJitter jitter() {
    return jitter;
  }

  @Override
  public final SourceFormat format() {
    return format;
  }

  @Override
  public final SourceCounters counters() {
    return counters;
  }

  @Override
  public final void close() {
    if (!closed) {
      closed = true;
      connected = false;
      disconnect();
    }
  }
}
