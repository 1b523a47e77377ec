package org.boothlamp.monitor;

/**
 * How the lateness of the pairs changes over one length of time. Keeps the least lateness of
 * eighteenths of that length, because pairs can be late but never early, and compares three short
 * parts of it: the first, the middle and the last. A change counts if it is a larger share of the
 * time than the limit, larger than blocks can be late by chance, and about as large in either half:
 * a step, as of lost pairs or of a host that was busy, lies in one half only. Nothing is created
 * after construction. Confined to one thread.
 *
 * <pre>
 *   older     | first |                | middle |                | last | now
 *   (earliest)  3/18                      3/18                     3/18
 * </pre>
 */
final class LatenessWindow {

  /**
   * What the way of a block can take by chance: 16 ms of a USB-serial converter's latency timer
   * (FTDI's default; from memory), and a little for the host.
   */
  private static final long LEAST_CHANGE_NANOS = 18_000_000L;

  /** A step of the lateness between two bins that no clock makes: pairs were lost or late. */
  private static final long STEP_NANOS = 50_000_000L;

  private static final int BINS_A_LENGTH = 18;

  /** Twice the length, so that something older is known. */
  private static final int MOST_BINS = 2 * BINS_A_LENGTH;

  private static final int PART_BINS = 3;

  /** Share of the whole change that must lie in either half. */
  private static final double LEAST_PART = 0.25;

  /** What was found is over a little below the limit, or it would flicker. */
  private static final double BACK_SHARE = 0.8;

  private static final int NONE = -1;

  private final long lengthNanos;
  private final long binNanos;
  private final double limitShare;

  private final long[] late = new long[MOST_BINS];
  private final long[] nanos = new long[MOST_BINS];
  private final long[] openedNanos = new long[MOST_BINS];
  private final long[] openedIndex = new long[MOST_BINS];
  private final long[] bursts = new long[MOST_BINS];
  private int held;
  private int next;

  private boolean open;
  private long openNanos;
  private long openIndex;
  private long openLate;
  private long openLateNanos;
  private long openBurst;

  private int first;
  private int middle;
  private int last;
  private int oldest;
  private long leastOlder;

  private boolean seen;
  private boolean sound;
  private double share;
  private long sinceNanos;
  private long sinceIndex;

  /** A window that has seen nothing, over so long a time, with so large a share for a limit. */
  LatenessWindow(long lengthNanos, double limitShare) {
    this.lengthNanos = lengthNanos;
    this.limitShare = limitShare;
    binNanos = lengthNanos / BINS_A_LENGTH;
  }

  /** Begins anew; what was found stays found until it can be judged again. */
  void clear() {
    held = 0;
    open = false;
    sound = false;
  }

  /** What was found was about a time that is over. */
  void forget() {
    clear();
    seen = false;
  }

  /**
   * Takes a block.
   *
   * @param lateNanos lateness of its last pair, against any constant
   * @param now when it came
   * @param endIndex index of the pair after its last
   * @param burstNanos how long the pairs took that came together with it
   * @return true if a bin was completed
   */
  boolean add(long lateNanos, long now, long endIndex, long burstNanos) {
    boolean closes = open && now - openNanos >= binNanos;
    if (closes) {
      close();
      judge();
    }
    if (!open) {
      open = true;
      openNanos = now;
      openIndex = endIndex;
      openLate = Long.MAX_VALUE;
    }
    if (lateNanos < openLate) {
      openLate = lateNanos;
      openLateNanos = now;
      openBurst = burstNanos;
    }
    return closes;
  }

  private void close() {
    if (held > 0 && isStep(openLate - late[place(0)])) {
      held = 0;
    }
    late[next] = openLate;
    nanos[next] = openLateNanos;
    openedNanos[next] = openNanos;
    openedIndex[next] = openIndex;
    bursts[next] = openBurst;
    next = next + 1 == MOST_BINS ? 0 : next + 1;
    held = Math.min(held + 1, MOST_BINS);
    open = false;
  }

  /** In a bin shorter than a step, a wrong rate could make one as well. */
  private boolean isStep(long change) {
    return binNanos > STEP_NANOS && Math.abs(change) > STEP_NANOS;
  }

  private int place(int age) {
    return Math.floorMod(next - 1 - age, MOST_BINS);
  }

  private void judge() {
    sortBins();
    sound = false;
    if (first == NONE || middle == NONE) {
      return;
    }
    long allowed = Math.max(LEAST_CHANGE_NANOS, longestBurst());
    long change = late[last] - late[first];
    long passed = nanos[last] - nanos[first];
    double now = (double) change / passed;
    double limit = seen ? BACK_SHARE * limitShare : limitShare;
    boolean beyond = Math.abs(now) > limit && Math.abs(change) > allowed;
    boolean tells = allowed <= Math.max(LEAST_CHANGE_NANOS, limitShare * passed);
    sound = tells && Math.abs(now) <= BACK_SHARE * limitShare;
    boolean found = beyond && isSteady() && isEarlierThanEver(change);
    if (found && !seen) {
      sinceNanos = openedNanos[oldest];
      sinceIndex = openedIndex[oldest];
    }
    seen = found;
    share = now;
  }

  /** What comes together waited, by chance, up to as long as it took. */
  private long longestBurst() {
    return Math.max(bursts[first], Math.max(bursts[middle], bursts[last]));
  }

  private void sortBins() {
    first = NONE;
    middle = NONE;
    last = place(0);
    oldest = last;
    leastOlder = Long.MAX_VALUE;
    long partNanos = PART_BINS * binNanos;
    boolean reached = false;
    for (int k = 0; k < held; k++) {
      int bin = place(k);
      long age = nanos[place(0)] - nanos[bin];
      if (reached) {
        leastOlder = Math.min(leastOlder, late[bin]);
        continue;
      }
      oldest = bin;
      if (age < partNanos) {
        last = earlier(last, bin);
      } else if (age >= lengthNanos - partNanos) {
        first = earlier(first, bin);
        reached = age >= lengthNanos;
      } else if (Math.abs(2 * age - lengthNanos) <= partNanos) {
        middle = earlier(middle, bin);
      }
    }
  }

  private int earlier(int least, int bin) {
    return least == NONE || late[bin] < late[least] ? bin : least;
  }

  private boolean isSteady() {
    long before = late[middle] - late[first];
    long after = late[last] - late[middle];
    double least = LEAST_PART * Math.abs(before + after);
    return Long.signum(before) == Long.signum(after)
        && Math.min(Math.abs(before), Math.abs(after)) >= least;
  }

  /** Pairs that come faster become earlier than ever; a backlog that is caught up does not. */
  private boolean isEarlierThanEver(long change) {
    return change > 0 || late[last] < leastOlder;
  }

  /** True while the lateness changes by more than the limit. */
  boolean isSeen() {
    return seen;
  }

  /** True if the last look could tell that it changes by clearly less than the limit. */
  boolean isSound() {
    return sound;
  }

  /** How much later pairs become, as a share of the time that passes: negative if they are fast. */
  double share() {
    return share;
  }

  /** The share from which a change is found. */
  double limitShare() {
    return limitShare;
  }

  /** When the window began in which the change was found. */
  long sinceNanos() {
    return sinceNanos;
  }

  /** Index of the pair after the last one of that moment. */
  long sinceIndex() {
    return sinceIndex;
  }
}
