package org.boothlamp.sync;

import java.util.random.RandomGenerator;

/**
 * Pauses after failures: up to 1 s after the first, up to twice as much after each further one, at
 * most 5 minutes. Each is drawn evenly from all of that range, so that the booths of a school do
 * not come back at the same moment. Confined to one thread.
 */
final class Backoff {

  static final long FIRST_NANOS = 1_000_000_000L;
  static final long LONGEST_NANOS = 300_000_000_000L;

  private final RandomGenerator random;
  private long limitNanos = FIRST_NANOS;

  Backoff(RandomGenerator random) {
    this.random = random;
  }

  /** The pause after one more failure, ns. */
  long next() {
    long pause = random.nextLong(limitNanos + 1);
    limitNanos = Math.min(LONGEST_NANOS, 2 * limitNanos);
    return pause;
  }

  /** It worked. */
  void reset() {
    limitNanos = FIRST_NANOS;
  }
}
