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

  final short[] current;
  final short[] voltage;
  final PairSums sums = new PairSums();
  PairLoop loop;
  int count;
  int currentOffset;
  long number;
  int missingPairs;

  Slot(int mostPairs, PairLoop loop) {
    current = new short[mostPairs];
    voltage = new short[mostPairs];
    this.loop = loop;
  }

  /** Sums of the pairs that arrived. */
  public PairSums sums() {
    return sums;
  }

  /** The short circuits that ended in this slot, and the cycles that they closed. */
  public ShortCycles shortCycles() {
    return loop.cycles;
  }

  /**
   * Sums over the part of the slot in which the arc was on: from the first pair with current to the
   * last. For a slot at either edge of an arc; all pairs if none carries current.
   *
   * @param into filled with the sums; its short circuits stay 0
   */
  public void sumFlowing(PairSums into) {
    int from = 0;
    int until = count;
    while (from < until && !loop.isFlowing(current[from])) {
      from++;
    }
    while (until > from && !loop.isFlowing(current[until - 1])) {
      until--;
    }
    if (from == until || until - from == count) {
      into.set(sums);
      return;
    }
    into.clear();
    loop.addPart(current, voltage, from, until, into);
  }

  /**
   * Pairs whose current count, as the converter gave it, was at or beyond a limit. Looks at single
   * pairs only if the extremes touch one.
   *
   * @param low a count at or below it is at the limit
   * @param high a count at or above it is at the limit
   */
  public int currentPairsAtLimit(int low, int high) {
    int fromBelow = Math.max(Short.MIN_VALUE, low - currentOffset);
    int fromAbove = Math.min(Short.MAX_VALUE, high - currentOffset);
    return sums.lowestCurrent > fromBelow && sums.highestCurrent < fromAbove
        ? 0
        : countOutside(current, count, fromBelow, fromAbove);
  }

  /** The same of the voltage. */
  public int voltagePairsAtLimit(int low, int high) {
    return sums.lowestVoltage > low && sums.highestVoltage < high
        ? 0
        : countOutside(voltage, count, low, high);
  }

  private static int countOutside(short[] counts, int count, int low, int high) {
    int outside = 0;
    for (int k = 0; k < count; k++) {
      outside += counts[k] <= low || counts[k] >= high ? 1 : 0;
    }
    return outside;
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
    return count == 0;
  }
}
