package org.boothlamp.acquisition;

import java.util.Locale;

/**
 * How late pairs are taken after they are due, and how many a second.
 *
 * <p>Lateness goes into a fixed histogram of 1 µs steps up to 10 ms over the whole run, 80 KB; the
 * rate is that of the last 2 s and of the last 10 s, in quarters of a second. Adding creates no
 * objects. One thread adds; any may ask, and reads values that are slightly old.
 *
 * <p>Deadlines go by the clock that also measures, so what is short of the rate asked for is pairs
 * lost and nothing else. A rate is not held when 1 % of the pairs of 10 s are missing, which is as
 * much as means and energy may be wrong in all, or 3 % of those of 2 s, as much as the count of
 * short circuits may be; one pause of 50 ms is neither. It is held again at half a percent, so that
 * a rate at the limit does not come and go.
 */
public final class SamplingJitter {

  private static final int STEP_NANOS = 1_000;
  private static final int STEPS = 10_000;
  private static final long BIN_NANOS = 250_000_000L;

  /** 2 s. */
  private static final int SHORT_BINS = 8;

  /** 10 s. */
  private static final int LONG_BINS = 40;

  /** A program that has just started is slow for a second: those pairs count as lost, not here. */
  private static final int WARM_UP_BINS = 4;

  private static final double HELD_SHORT = 0.97;
  private static final double HELD_LONG = 0.99;
  private static final double HELD_AGAIN = 0.995;

  private static final double NANOS_PER_SECOND = 1e9;
  private static final double NANOS_PER_MICRO = 1e3;

  private final int askedPairsPerSecond;

  /** One more than the steps, for all that is later. */
  private final long[] taken = new long[STEPS + 1];

  private final long[] binPairs = new long[LONG_BINS];
  private final long[] binNanos = new long[LONG_BINS];
  private int bins;
  private int nextBin;
  private int warmUpBins;
  private boolean binOpen;
  private long binStartNanos;
  private long pairsInBin;

  private volatile long pairs;
  private volatile long worstNanos;
  private volatile double shortPairsPerSecond = Double.NaN;
  private volatile double longPairsPerSecond = Double.NaN;
  private volatile double longSeconds;
  private volatile boolean slow;

  /** Nothing counted yet. */
  SamplingJitter(int askedPairsPerSecond) {
    this.askedPairsPerSecond = askedPairsPerSecond;
  }

  /**
   * Counts a pair.
   *
   * @param takenNanos monotonic time at which it was taken
   * @param lateNanos how long it was due by then, at least 0
   */
  void add(long takenNanos, long lateNanos) {
    taken[(int) Math.min(lateNanos / STEP_NANOS, STEPS)]++;
    if (lateNanos > worstNanos) {
      worstNanos = lateNanos;
    }
    pairs++;
    countInBin(takenNanos);
  }

  private void countInBin(long takenNanos) {
    if (!binOpen) {
      binOpen = true;
      binStartNanos = takenNanos;
      pairsInBin = 0;
      return;
    }
    pairsInBin++;
    long length = takenNanos - binStartNanos;
    if (length >= BIN_NANOS) {
      closeBin(length);
      binStartNanos = takenNanos;
      pairsInBin = 0;
    }
  }

  private void closeBin(long length) {
    if (warmUpBins < WARM_UP_BINS) {
      warmUpBins++;
      return;
    }
    binPairs[nextBin] = pairsInBin;
    binNanos[nextBin] = length;
    nextBin = nextBin + 1 == LONG_BINS ? 0 : nextBin + 1;
    bins = Math.min(bins + 1, LONG_BINS);
    if (bins >= SHORT_BINS) {
      judge();
    }
  }

  private void judge() {
    double recent = rateOver(SHORT_BINS);
    double last = rateOver(bins);
    longSeconds = nanosOver(bins) / NANOS_PER_SECOND;
    shortPairsPerSecond = recent;
    longPairsPerSecond = last;
    boolean shortOfLong = bins == LONG_BINS && last < HELD_LONG * askedPairsPerSecond;
    if (shortOfLong || recent < HELD_SHORT * askedPairsPerSecond) {
      slow = true;
    } else if (last >= HELD_AGAIN * askedPairsPerSecond) {
      slow = false;
    }
  }

  private double rateOver(int count) {
    long sum = 0;
    for (int age = 1; age <= count; age++) {
      sum += binPairs[Math.floorMod(nextBin - age, LONG_BINS)];
    }
    return sum * NANOS_PER_SECOND / nanosOver(count);
  }

  private long nanosOver(int count) {
    long sum = 0;
    for (int age = 1; age <= count; age++) {
      sum += binNanos[Math.floorMod(nextBin - age, LONG_BINS)];
    }
    return sum;
  }

  /** Pairs stopped coming: what passes until the next one does not count to the rate. */
  void interrupt() {
    binOpen = false;
    bins = 0;
    shortPairsPerSecond = Double.NaN;
    longPairsPerSecond = Double.NaN;
    slow = false;
  }

  /** True while the rate asked for is not held. */
  boolean isSlow() {
    return slow;
  }

  /** Rate over the last 10 s, or since an interruption; NaN before 2 s of it are known. */
  public double pairsPerSecond() {
    return longPairsPerSecond;
  }

  /**
   * Lateness that a share of all pairs does not exceed, to 1 µs above; the worst one if it lies
   * beyond 10 ms; 0 without pairs.
   *
   * @param share 0 to 1
   */
  public long quantileNanos(double share) {
    long wanted = (long) Math.ceil(share * pairs);
    long seen = 0;
    for (int step = 0; step < STEPS; step++) {
      seen += taken[step];
      if (seen >= wanted) {
        return wanted == 0 ? 0 : Math.min((step + 1L) * STEP_NANOS, worstNanos);
      }
    }
    return worstNanos;
  }

  /** The latest of all pairs. */
  public long worstNanos() {
    return worstNanos;
  }

  /** Pairs counted. */
  public long pairs() {
    return pairs;
  }

  /** "3100 over 2 s", and over as much of 10 s as there is if that is longer. */
  String achievedWords() {
    String recent = String.format(Locale.ROOT, "%.0f over 2 s", shortPairsPerSecond);
    long seconds = Math.round(longSeconds);
    return seconds <= 2
        ? recent
        : String.format(Locale.ROOT, "%s and %.0f over %d s", recent, longPairsPerSecond, seconds);
  }

  /**
   * Rate and lateness in words, or null before 2 s of the rate are known.
   *
   * @param lostPairs pairs that were never taken, of the whole run
   */
  String words(long lostPairs) {
    if (Double.isNaN(longPairsPerSecond)) {
      return null;
    }
    return String.format(
        Locale.ROOT,
        "%.0f of %d pairs/s over the last %.0f s, %d of %d pairs lost since the start; taken late by"
            + " %.0f µs (half of them less), %.0f µs (99 %%), %.0f µs (worst)",
        longPairsPerSecond,
        askedPairsPerSecond,
        longSeconds,
        lostPairs,
        lostPairs + pairs,
        quantileNanos(0.5) / NANOS_PER_MICRO,
        quantileNanos(0.99) / NANOS_PER_MICRO,
        worstNanos / NANOS_PER_MICRO);
  }
}
