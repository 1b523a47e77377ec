package org.boothlamp.signal;

/**
 * 10 ms of sample pairs, reduced to sums: the grain of everything after it. One object is filled
 * again for every slot; whoever wants to keep one copies its sums. Confined to one thread.
 */
public final class Slot {

  /** Slots in a second. */
  public static final int PER_SECOND = 100;

  /** Length of a slot, seconds. */
  public static final double SECONDS = 1.0 / PER_SECOND;

  /** Length of a slot, nanoseconds. */
  public static final long NANOS = 1_000_000_000L / PER_SECOND;

  final PairSums sums = new PairSums();
  long number;
  int missingPairs;

  /** Sums of the pairs that arrived. */
  public PairSums sums() {
    return sums;
  }

  /** Number of this slot since the source's pair 0; slots follow each other without holes. */
  public long number() {
    return number;
  }

  /** Pairs of this slot that never arrived. */
  public int missingPairs() {
    return missingPairs;
  }

  /** True if not one pair arrived: time that nobody measured. */
  public boolean isMissing() {
    return sums.pairs == 0;
  }
}
