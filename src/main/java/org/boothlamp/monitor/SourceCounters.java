package org.boothlamp.monitor;

/**
 * What went wrong on the way in, counted since the source was opened. Written by the sampler's
 * thread only; other threads may read a slightly old value.
 */
public final class SourceCounters {

  /** Frames thrown away because their CRC, length or type was wrong. */
  public volatile long badFrames;

  /** Pairs that the index says were sent and that never arrived. */
  public volatile long lostPairs;

  /** Times the line was opened again after it had failed. */
  public volatile long reconnects;
}
