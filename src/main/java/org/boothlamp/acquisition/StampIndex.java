package org.boothlamp.acquisition;

/**
 * Finds the index of pairs by the time at which the kernel took each.
 *
 * <p>The expected time of the next pair follows the stamps slowly, so that a trigger that runs a
 * few percent fast or slow, and stamps that jitter by less than three quarters of a period, make no
 * gaps; a stamp that is later by more is pairs lost. A stamp that jumps further than the host's
 * monotonic clock went, or back, is a clock that was set: the index then goes on as if nothing
 * were. Creates no objects. Confined to one thread.
 */
final class StampIndex {

  private static final double NANOS_PER_SECOND = 1e9;

  /** Part of a deviation by which the expectation moves. */
  private static final double FOLLOWED = 0.1;

  /** Periods late from which on a pair is missing before this one. */
  private static final double GAP = 0.75;

  /** How much later than it was taken a pair may arrive. */
  private static final double LATENESS_NANOS = 1e9;

  private final double periodNanos;
  private boolean begun;
  private boolean interrupted;
  private long nextIndex;
  private long lastStampNanos;
  private long lastArrivalNanos;

  /** Time after the last stamp at which the next is expected. */
  private double expectedNanos;

  private double deviationNanos;
  private long lostPairs;

  StampIndex(int pairsPerSecond) {
    periodNanos = NANOS_PER_SECOND / pairsPerSecond;
  }

  /** The device was lost: the next pair is placed by the host's clock. */
  void interrupt() {
    interrupted = begun;
  }

  /**
   * Index of a pair.
   *
   * @param stampNanos when it was taken, by the kernel's clock
   * @param arrivalNanos when it was read, by the host's monotonic clock
   */
  long place(long stampNanos, long arrivalNanos) {
    double error = stampNanos - lastStampNanos - expectedNanos;
    double possible = arrivalNanos - lastArrivalNanos + LATENESS_NANOS;
    deviationNanos = 0;
    if (interrupted) {
      nextIndex += Math.max(0, Math.round((arrivalNanos - lastArrivalNanos) / periodNanos) - 1);
      interrupted = false;
      expectedNanos = periodNanos;
    } else if (!begun || Math.abs(error) > possible) {
      expectedNanos = periodNanos;
    } else {
      follow(error);
    }
    begun = true;
    lastStampNanos = stampNanos;
    lastArrivalNanos = arrivalNanos;
    return nextIndex++;
  }

  private void follow(double error) {
    long missing = error > GAP * periodNanos ? Math.max(1, Math.round(error / periodNanos)) : 0;
    double rest = error - missing * periodNanos;
    lostPairs += missing;
    nextIndex += missing;
    deviationNanos = rest;
    expectedNanos = periodNanos - (1 - FOLLOWED) * rest;
  }

  /** How far the last stamp was from where it was expected, gaps taken out. */
  long deviationNanos() {
    return Math.round(Math.abs(deviationNanos));
  }

  /** Pairs that the stamps say were not delivered. */
  long lostPairs() {
    return lostPairs;
  }
}
