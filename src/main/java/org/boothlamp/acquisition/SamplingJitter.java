package org.boothlamp.acquisition;

import java.util.Locale;

/**
 * How late pairs are taken after they are due, and how many a second.
 *
 * <p>Lateness goes into a fixed histogram of 1 µs steps up to 10 ms over the whole run, 80 KB; the
 * rate is that of the last quarter of a second. Adding creates no objects. One thread adds; any may
 * ask, and reads values that are slightly old.
 */
public final class SamplingJitter {

  private static final int STEP_NANOS = 1_000;
  private static final int STEPS = 10_000;
  private static final long WINDOW_NANOS = 250_000_000L;

  /** Part of the rate from which on it counts as held: a hiccup is no slow bus. */
  private static final double HELD = 0.98;

  /** The first ones of a program that has just started are slow. */
  private static final int SLOW_WINDOWS = 3;

  private static final double NANOS_PER_SECOND = 1e9;
  private static final double NANOS_PER_MICRO = 1e3;

  private final int askedPairsPerSecond;

  /** One more than the steps, for all that is later. */
  private final long[] taken = new long[STEPS + 1];

  private volatile long pairs;
  private volatile long worstNanos;
  private volatile double pairsPerSecond = Double.NaN;
  private volatile int slowWindows;

  private boolean windowOpen;
  private long windowStartNanos;
  private long windowPairs;

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
    countInWindow(takenNanos);
  }

  private void countInWindow(long takenNanos) {
    if (!windowOpen) {
      windowOpen = true;
      windowStartNanos = takenNanos;
      windowPairs = 0;
      return;
    }
    windowPairs++;
    long length = takenNanos - windowStartNanos;
    if (length >= WINDOW_NANOS) {
      pairsPerSecond = windowPairs * NANOS_PER_SECOND / length;
      slowWindows = pairsPerSecond < HELD * askedPairsPerSecond ? slowWindows + 1 : 0;
      windowStartNanos = takenNanos;
      windowPairs = 0;
    }
  }

  /** Pairs stopped coming: what passes until the next one does not count to the rate. */
  void interrupt() {
    windowOpen = false;
    pairsPerSecond = Double.NaN;
    slowWindows = 0;
  }

  /** True if the rate asked for was not reached for three quarters of a second. */
  boolean isSlow() {
    return slowWindows >= SLOW_WINDOWS;
  }

  /** Rate over the last quarter of a second; NaN while there is none. */
  public double pairsPerSecond() {
    return pairsPerSecond;
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

  /** Rate and lateness in words, or null before the first quarter of a second is over. */
  String words() {
    if (Double.isNaN(pairsPerSecond)) {
      return null;
    }
    return String.format(
        Locale.ROOT,
        "%.0f of %d pairs/s; taken late by %.0f µs (half of them less), %.0f µs (99 %%), %.0f µs"
            + " (worst)",
        pairsPerSecond,
        askedPairsPerSecond,
        quantileNanos(0.5) / NANOS_PER_MICRO,
        quantileNanos(0.99) / NANOS_PER_MICRO,
        worstNanos / NANOS_PER_MICRO);
  }
}
