package org.boothlamp.monitor;

/**
 * Holds the index of the pairs against the clock: whether they come at the rate the source says,
 * and whether its clock runs away. Pairs come in bursts and can only be late, never early, so the
 * least lateness of a short while is what counts. Where pairs do not come in real time the block's
 * time is counted from them, and nothing is ever found. Nothing is created after construction.
 * Confined to one thread.
 */
final class RateWatch {

  /** More than this share off, and times, energy and short circuits a second are wrong at once. */
  private static final double MOST_RATE_SHARE = 0.05;

  /** An oscillator without a crystal is right to about this share; from memory. */
  private static final double MOST_DRIFT_SHARE = 0.005;

  private static final long BIN_NANOS = 50_000_000L;
  private static final long LONG_BIN_NANOS = 1_000_000_000L;

  /** Ten bins: 0.5 s. */
  private static final int BINS = 10;

  /** 30 s between the first and the last. */
  private static final int LONG_BINS = 31;

  /** After such a break the source may have begun to count anew. */
  private static final long BREAK_NANOS = 250_000_000L;

  /** A step of the lateness between two long bins that no clock makes: pairs were lost or late. */
  private static final long STEP_NANOS = 50_000_000L;

  private static final long CLEAR_NANOS = 500_000_000L;

  /** Bins at either end of the half second, whose least lateness is compared. */
  private static final int END_BINS = 3;

  private static final long NANOS_PER_SECOND = 1_000_000_000L;

  private final int pairsPerSecond;
  private final Bins bins = new Bins(BINS, BIN_NANOS);
  private final Bins longBins = new Bins(LONG_BINS, LONG_BIN_NANOS);
  private boolean begun;
  private long baseNanos;
  private long baseIndex;
  private long lastNanos;
  private boolean wrongRate;
  private long wrongRateSeenNanos;
  private boolean drifting;

  /** Least lateness of the last equally long whiles, the running one left out. */
  private static final class Bins {
    private final long lengthNanos;
    private final long[] late;
    private final long[] nanos;
    private int held;
    private int next;
    private boolean open;
    private long openedNanos;
    private long openLate;
    private long openLateNanos;

    Bins(int count, long lengthNanos) {
      late = new long[count];
      nanos = new long[count];
      this.lengthNanos = lengthNanos;
    }

    void clear() {
      held = 0;
      open = false;
    }

    /** True if a while was completed and all places are filled. */
    boolean add(long lateNanos, long now) {
      boolean closes = open && now - openedNanos >= lengthNanos;
      if (closes) {
        close();
      }
      if (!open) {
        open = true;
        openedNanos = now;
        openLate = Long.MAX_VALUE;
      }
      if (lateNanos < openLate) {
        openLate = lateNanos;
        openLateNanos = now;
      }
      return closes && held == late.length;
    }

    private void close() {
      late[next] = openLate;
      nanos[next] = openLateNanos;
      next = next + 1 == late.length ? 0 : next + 1;
      held = Math.min(held + 1, late.length);
      open = false;
    }

    private int place(int age) {
      return Math.floorMod(next - 1 - age, late.length);
    }

    /** Place of the least lateness among bins of an age, 0 the youngest. */
    int least(int fromAge, int untilAge) {
      int least = place(fromAge);
      for (int age = fromAge + 1; age < untilAge; age++) {
        least = late[place(age)] < late[least] ? place(age) : least;
      }
      return least;
    }
  }

  RateWatch(int pairsPerSecond) {
    this.pairsPerSecond = pairsPerSecond;
  }

  /** Takes a block with pairs. */
  void accept(SampleBlock block) {
    long now = block.monotonicNanos;
    long endIndex = block.firstIndex + block.count;
    if (!begun || now - lastNanos >= BREAK_NANOS) {
      begin(now, endIndex);
    }
    lastNanos = now;
    long lateNanos = now - baseNanos - nanosOf(endIndex - baseIndex);
    if (bins.add(lateNanos, now)) {
      lookAtRate(now);
    }
    if (longBins.add(lateNanos, now)) {
      drifting = !wrongRate && runsAway();
    }
    dropSteps();
  }

  private void begin(long now, long endIndex) {
    begun = true;
    baseNanos = now;
    baseIndex = endIndex;
    bins.clear();
    longBins.clear();
    wrongRate = false;
    drifting = false;
  }

  /** Split in seconds and rest, or the product would overflow. */
  private long nanosOf(long pairs) {
    return pairs / pairsPerSecond * NANOS_PER_SECOND
        + pairs % pairsPerSecond * NANOS_PER_SECOND / pairsPerSecond;
  }

  private void lookAtRate(long now) {
    int last = bins.least(0, END_BINS);
    int middle = bins.least(END_BINS, BINS - END_BINS);
    int first = bins.least(BINS - END_BINS, BINS);
    double share = share(bins, first, last);
    boolean steady = isSame(share, share(bins, first, middle), share(bins, middle, last));
    if (steady && Math.abs(share) > MOST_RATE_SHARE) {
      wrongRate = true;
      wrongRateSeenNanos = now;
    } else {
      wrongRate = wrongRate && now - wrongRateSeenNanos < CLEAR_NANOS;
    }
  }

  /** A single step, as of a late burst, lies in one half only. */
  private static boolean isSame(double share, double earlier, double later) {
    double least = MOST_RATE_SHARE / 2;
    return share > 0 ? earlier > least && later > least : earlier < -least && later < -least;
  }

  private boolean runsAway() {
    return Math.abs(share(longBins, longBins.place(LONG_BINS - 1), longBins.place(0)))
        > MOST_DRIFT_SHARE;
  }

  /** How much later pairs become, as a share of the time that passes. */
  private static double share(Bins bins, int first, int last) {
    double passed = bins.nanos[last] - bins.nanos[first];
    return passed > 0 ? (bins.late[last] - bins.late[first]) / passed : 0;
  }

  private void dropSteps() {
    if (longBins.held >= 2) {
      long step = longBins.late[longBins.place(0)] - longBins.late[longBins.place(1)];
      if (Math.abs(step) > STEP_NANOS) {
        longBins.clear();
      }
    }
  }

  /** True while pairs come more than 5 % faster or slower than the source says, over 0.5 s. */
  boolean isWrongRate() {
    return wrongRate;
  }

  /** True while the source's clock is off by more than 0.5 % over 30 s. */
  boolean isDrifting() {
    return drifting;
  }
}
