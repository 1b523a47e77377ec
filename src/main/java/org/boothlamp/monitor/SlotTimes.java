package org.boothlamp.monitor;

import org.boothlamp.signal.Slot;

/**
 * When a slot was: counted back by the samples from the end of the block that completed it, so that
 * the size of a block does not matter. Confined to one thread.
 */
final class SlotTimes {

  private final int pairsPerSecond;
  private long blockNanos;
  private long blockWallMillis;
  private long blockEndPair;

  SlotTimes(int pairsPerSecond) {
    this.pairsPerSecond = pairsPerSecond;
  }

  /** From now on slots are completed by this block. */
  void follow(SampleBlock block, long wallMillis) {
    blockNanos = block.monotonicNanos;
    blockWallMillis = wallMillis;
    blockEndPair = block.firstIndex + block.count;
  }

  /** Moment at which a slot begins, monotonic. */
  long nanosAt(long slot) {
    long wholeSeconds = blockEndPair / pairsPerSecond;
    long restNanos = blockEndPair % pairsPerSecond * 1_000_000_000L / pairsPerSecond;
    return blockNanos - restNanos - (wholeSeconds * Slot.PER_SECOND - slot) * Slot.NANOS;
  }

  /** Time of day of that moment, ms since the epoch. */
  long wallMillisAt(long slot) {
    return blockWallMillis - (blockNanos - nanosAt(slot)) / 1_000_000;
  }
}
