package org.boothlamp.boothlog;

import org.boothlamp.monitor.LogEntry;

/**
 * One moment on three clocks. Immutable.
 *
 * @param wallMillis time of day, ms since the epoch: a label
 * @param monotonicNanos monotonic time, ns
 * @param seconds seconds since the source's first pair; NaN if the sampler did not see it
 */
record Moment(long wallMillis, long monotonicNanos, double seconds) {

  private static final double NANOS_PER_SECOND = 1e9;
  private static final double MILLIS_PER_SECOND = 1e3;

  /** The moment an entry tells of. */
  static Moment of(LogEntry entry) {
    return new Moment(entry.wallMillis, entry.monotonicNanos, entry.startSeconds);
  }

  /** The moment {@code lengthSeconds} later. */
  Moment plus(double lengthSeconds) {
    return new Moment(
        wallMillis + Math.round(lengthSeconds * MILLIS_PER_SECOND),
        monotonicNanos + Math.round(lengthSeconds * NANOS_PER_SECOND),
        seconds + lengthSeconds);
  }

  /** Seconds from this moment to a later one, by the monotonic clock. */
  double secondsUntil(Moment later) {
    return (later.monotonicNanos - monotonicNanos) / NANOS_PER_SECOND;
  }
}
