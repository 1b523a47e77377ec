package org.boothlamp.app;

import org.boothlamp.monitor.SampleBlock;
import org.boothlamp.monitor.SampleSource;
import org.boothlamp.monitor.SourceCounters;
import org.boothlamp.monitor.SourceFormat;
import org.boothlamp.monitor.WallClock;

/**
 * A source that does not run in real time, with the time of day that goes with its samples: it
 * starts at a given moment and runs as fast as the samples do. Reads belong to the sampler's
 * thread; the clock may be read from any.
 */
final class SourceTime implements SampleSource, WallClock {

  private final SampleSource source;
  private final long startWallMillis;
  private volatile long elapsedNanos;

  SourceTime(SampleSource source, long startWallMillis) {
    this.source = source;
    this.startWallMillis = startWallMillis;
  }

  @Override
  public Outcome read(SampleBlock block) {
    Outcome outcome = source.read(block);
    elapsedNanos = block.monotonicNanos;
    return outcome;
  }

  @Override
  public long epochMillis() {
    return startWallMillis + elapsedNanos / 1_000_000;
  }

  @Override
  public SourceFormat format() {
    return source.format();
  }

  @Override
  public SourceCounters counters() {
    return source.counters();
  }

  @Override
  public void close() {
    source.close();
  }
}
