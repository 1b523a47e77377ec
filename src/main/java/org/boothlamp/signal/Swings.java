package org.boothlamp.signal;

/**
 * The swings of a pulsed or alternating current: how many a second, and how high and how long each
 * half is. A pair is in the upper half from the moment the current has risen through the middle of
 * its extremes of the last 0.1 s, by a margin for noise, until it falls through it likewise.
 *
 * <p>Slots are looked at only where the current swings by {@value #LEAST_SWING_SHARE} of its peak
 * and no short circuit was seen for 0.1 s: short-circuit transfer swings as well, and a steady arc
 * costs nothing. Nothing is created after construction. Confined to one thread.
 */
public final class Swings {

  /** A swing below this share of the peak is ripple. */
  public static final double LEAST_SWING_SHARE = 0.4;

  private static final int REMEMBERED_SLOTS = Slot.PER_SECOND / 10;
  private static final double MARGIN_SHARE = 0.15;

  private final int[] lows = new int[REMEMBERED_SLOTS];
  private final int[] highs = new int[REMEMBERED_SLOTS];
  private int slotsSinceShort;
  private int remembered;
  private int next;

  private boolean upper;
  private long position;

  /** Pair at which the last swing began; below 0 if none is known. */
  private long riseAt = -1;

  private long upperSinceRise;
  private long upperCountsSinceRise;
  private long countsSinceRise;

  private long swings;
  private long pairs;
  private long upperPairs;
  private long upperCounts;
  private long allCounts;

  /** Forgets everything. */
  public void clear() {
    remembered = 0;
    next = 0;
    slotsSinceShort = 0;
    interrupt();
    position = 0;
    swings = 0;
    pairs = 0;
    upperPairs = 0;
    upperCounts = 0;
    allCounts = 0;
  }

  /** Becomes a copy of the sums of {@code other}, not of the swing it is in. */
  public void set(Swings other) {
    swings = other.swings;
    pairs = other.pairs;
    upperPairs = other.upperPairs;
    upperCounts = other.upperCounts;
    allCounts = other.allCounts;
  }

  private void interrupt() {
    riseAt = -1;
    upper = false;
  }

  /** Takes the next slot with current. */
  public void accept(Slot slot, PairScale scale) {
    remember(slot);
    int low = Integer.MAX_VALUE;
    int high = Integer.MIN_VALUE;
    for (int i = 0; i < remembered; i++) {
      low = Math.min(low, lows[i]);
      high = Math.max(high, highs[i]);
    }
    double zero = scale.current().zeroCount();
    double peak = Math.max(Math.abs(low - zero), Math.abs(high - zero));
    boolean swinging = high - low >= LEAST_SWING_SHARE * peak;
    if (!swinging || remembered < REMEMBERED_SLOTS || slotsSinceShort < REMEMBERED_SLOTS) {
      interrupt();
      position += slot.count;
      return;
    }
    double middle = (low + high) / 2.0;
    double margin = MARGIN_SHARE * (high - low);
    follow(slot, (int) Math.round(middle - margin), (int) Math.round(middle + margin));
  }

  private void remember(Slot slot) {
    slotsSinceShort = slot.sums.shortCircuits > 0 ? 0 : slotsSinceShort + 1;
    lows[next] = slot.sums.lowestCurrent;
    highs[next] = slot.sums.highestCurrent;
    next = (next + 1) % REMEMBERED_SLOTS;
    remembered = Math.min(remembered + 1, REMEMBERED_SLOTS);
  }

  private void follow(Slot slot, int falls, int rises) {
    for (int k = 0; k < slot.count; k++) {
      int count = slot.current[k];
      if (upper) {
        upper = count > falls;
      } else if (count >= rises) {
        upper = true;
        rise();
      }
      countsSinceRise += count;
      if (upper) {
        upperSinceRise++;
        upperCountsSinceRise += count;
      }
      position++;
    }
  }

  /** A swing is whole, and the next begins. */
  private void rise() {
    if (riseAt >= 0) {
      swings++;
      pairs += position - riseAt;
      upperPairs += upperSinceRise;
      upperCounts += upperCountsSinceRise;
      allCounts += countsSinceRise;
    }
    riseAt = position;
    upperSinceRise = 0;
    upperCountsSinceRise = 0;
    countsSinceRise = 0;
  }

  /** Whole swings. */
  public long swings() {
    return swings;
  }

  /** Swings a second; NaN without any. */
  public double hertz(int pairsPerSecond) {
    return swings == 0 ? Double.NaN : (double) swings * pairsPerSecond / pairs;
  }

  /** Share of the time in the upper half, 0 to 1. */
  public double upperShare() {
    return (double) upperPairs / pairs;
  }

  /** Mean of the upper half, A, signed. */
  public double upperAmps(PairScale scale) {
    return scale.current().toUnits((double) upperCounts / upperPairs);
  }

  /** Mean of the lower half, A, signed. */
  public double lowerAmps(PairScale scale) {
    return scale.current().toUnits((double) (allCounts - upperCounts) / (pairs - upperPairs));
  }
}
