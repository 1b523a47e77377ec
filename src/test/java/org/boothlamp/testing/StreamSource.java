package org.boothlamp.testing;

import org.boothlamp.monitor.SampleBlock;
import org.boothlamp.monitor.SampleSource;
import org.boothlamp.monitor.SourceCounters;
import org.boothlamp.monitor.SourceFormat;

/** Plays a stream of pairs as fast as it is read, on a clock of its own. Confined to one thread. */
public final class StreamSource implements SampleSource {

  private static final int BLOCK_PAIRS = 100;

  private final PairStream pairs;
  private final SourceFormat format;
  private final SourceCounters counters = new SourceCounters();
  private long index;
  private boolean closed;

  /** A source of a 16-bit converter. */
  public StreamSource(PairStream pairs, int pairsPerSecond) {
    this.pairs = pairs;
    format = new SourceFormat(pairsPerSecond, -32_768, 32_767, "stream");
  }

  @Override
  public Outcome read(SampleBlock block) {
    int count = (int) Math.min(BLOCK_PAIRS, pairs.pairs() - index);
    for (int i = 0; i < count; i++) {
      block.current[i] = pairs.current(index + i);
      block.voltage[i] = pairs.voltage(index + i);
    }
    block.count = count;
    block.firstIndex = index;
    index += count;
    block.monotonicNanos = index * 1_000_000_000L / format.pairsPerSecond();
    return count == 0 || closed ? Outcome.END : Outcome.PAIRS;
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
}
