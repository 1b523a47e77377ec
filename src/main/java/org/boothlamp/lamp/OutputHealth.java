package org.boothlamp.lamp;

/**
 * Counts an output's failures, and decides when to try it again and when to speak of it: the first
 * failure of a row is worth a line, and no more than one line a minute. Confined to the output's
 * thread, except {@link #failures}.
 */
final class OutputHealth {

  static final long SHORTEST_REST_NANOS = 50_000_000L;
  static final long LONGEST_REST_NANOS = 1_000_000_000L;
  static final long QUIET_NANOS = 60_000_000_000L;

  private volatile long failures;
  private long failuresInRow;
  private long restNanos = SHORTEST_REST_NANOS;
  private long restUntilNanos;
  private long lastSaidNanos;
  private boolean everSaid;
  private boolean saidInRow;

  /**
   * Notes a failure; each of a row doubles the rest.
   *
   * @return true if it is worth a line in the log
   */
  boolean failed(long nowNanos) {
    failures++;
    failuresInRow++;
    restUntilNanos = nowNanos + restNanos;
    restNanos = Math.min(2 * restNanos, LONGEST_REST_NANOS);
    return isWorthSaying(nowNanos);
  }

  private boolean isWorthSaying(long nowNanos) {
    if (saidInRow || everSaid && nowNanos - lastSaidNanos < QUIET_NANOS) {
      return false;
    }
    everSaid = true;
    saidInRow = true;
    lastSaidNanos = nowNanos;
    return true;
  }

  /**
   * Notes that the output works.
   *
   * @return how often it had failed in a row if that was said, so that its end is worth a line too;
   *     0 otherwise
   */
  long worked() {
    long ended = saidInRow ? failuresInRow : 0;
    failuresInRow = 0;
    saidInRow = false;
    restNanos = SHORTEST_REST_NANOS;
    return ended;
  }

  /**
   * True if the output failed a moment ago and is not to be tried yet, unless the signal changes.
   */
  boolean isResting(long nowNanos) {
    return failuresInRow > 0 && nowNanos - restUntilNanos < 0;
  }

  /** Failures so far. Any thread. */
  long failures() {
    return failures;
  }
}
