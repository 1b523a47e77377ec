package org.boothlamp.testing;

import java.util.ArrayDeque;
import java.util.Deque;
import org.boothlamp.monitor.SampleBlock;
import org.boothlamp.monitor.SampleSource;
import org.boothlamp.monitor.SourceCounters;
import org.boothlamp.monitor.SourceFormat;

/**
 * A source that plays what a test wrote down, on a clock of its own: pairs take the time they would
 * take, silence is said in seconds. Ends when the script does.
 */
public final class ScriptedSource implements SampleSource {

  private interface Step {
    Outcome play(SampleBlock block);
  }

  private final Deque<Step> steps = new ArrayDeque<>();
  private final SourceCounters counters = new SourceCounters();
  private SourceFormat format;
  private long nanos;
  private boolean closed;

  /** A source of this rate whose clock starts anywhere but at 0. */
  public ScriptedSource(int pairsPerSecond) {
    format = new SourceFormat(pairsPerSecond, -32_768, 32_767, "script");
    nanos = 5_000_000_000_000L;
  }

  /** Plays a script in blocks of so many pairs; a gap passes in the time of the block after it. */
  public ScriptedSource pairs(PairScript script, int blockPairs) {
    return pairs(script, blockPairs, 0);
  }

  /** The same with every index later by {@code offset}. */
  public ScriptedSource pairs(PairScript script, int blockPairs, long offset) {
    long next = 0;
    for (PairScript.Part part : script.parts()) {
      for (int from = 0; from < part.current().length; from += blockPairs) {
        int count = Math.min(blockPairs, part.current().length - from);
        int first = from;
        long end = part.firstIndex() + from + count;
        long pairsPassed = end - next;
        next = end;
        steps.add(
            block ->
                fill(block, part, first, count, part.firstIndex() + first + offset, pairsPassed));
      }
    }
    return this;
  }

  private Outcome fill(
      SampleBlock block, PairScript.Part part, int from, int count, long index, long pairsPassed) {
    System.arraycopy(part.current(), from, block.current, 0, count);
    System.arraycopy(part.voltage(), from, block.voltage, 0, count);
    block.count = count;
    block.firstIndex = index;
    nanos += pairsPassed * 1_000_000_000L / format.pairsPerSecond();
    return Outcome.PAIRS;
  }

  /** Nothing arrives; each read waits 50 ms. */
  public ScriptedSource silence(double seconds) {
    long reads = Math.round(seconds * 1e9 / LONGEST_WAIT_NANOS);
    for (long k = 0; k < reads; k++) {
      steps.add(
          block -> {
            nanos += LONGEST_WAIT_NANOS;
            return Outcome.NOTHING;
          });
    }
    return this;
  }

  /** Does something before the next read, such as counting a bad frame. */
  public ScriptedSource then(Runnable action) {
    steps.add(
        block -> {
          action.run();
          return null;
        });
    return this;
  }

  /** Goes on at another rate. */
  public ScriptedSource format(int pairsPerSecond) {
    return then(() -> format = new SourceFormat(pairsPerSecond, -32_768, 32_767, "script"));
  }

  @Override
  public Outcome read(SampleBlock block) {
    Outcome outcome = null;
    while (outcome == null) {
      Step step = steps.poll();
      outcome = step == null ? Outcome.END : step.play(block);
    }
    block.monotonicNanos = nanos;
    return outcome;
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
  }

  /** True once it was closed. */
  public boolean isClosed() {
    return closed;
  }
}
