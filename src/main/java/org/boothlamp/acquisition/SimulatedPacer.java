package org.boothlamp.acquisition;

import java.util.function.LongConsumer;
import org.boothlamp.monitor.NanoClock;
import org.boothlamp.monitor.SampleSource;

/**
 * Says how many pairs are due, so that a simulated booth runs in real time, a multiple of it, or
 * unhindered. Confined to the sampler's thread.
 */
final class SimulatedPacer {

  /** Fastest multiple of real time that can be asked for. */
  static final double FASTEST_SPEED = 10_000;

  private static final double NANOS_PER_SECOND = 1e9;

  /** Pairs are handed over in lots of a slot, as a serial line would bring them. */
  private static final double LOT_SECONDS = 0.01;

  private final int pairsPerSecond;
  private final double speed;
  private final NanoClock clock;
  private final LongConsumer waitNanos;
  private final int lotPairs;
  private long startNanos;
  private boolean started;

  /**
   * A pacer.
   *
   * @param speed 1 in real time, n for n times that, 0 unhindered
   * @param waitNanos waits about so long; may return early
   */
  SimulatedPacer(int pairsPerSecond, double speed, NanoClock clock, LongConsumer waitNanos) {
    this.pairsPerSecond = pairsPerSecond;
    this.speed = speed;
    this.clock = clock;
    this.waitNanos = waitNanos;
    lotPairs = Math.max(1, (int) (LOT_SECONDS * pairsPerSecond));
  }

  boolean isRealTime() {
    return speed == 1;
  }

  /** The clock's time, or the time of a pair where pairs are not in step with the clock. */
  long nanosAfter(long pairs) {
    return isRealTime() ? clock.nanoTime() : pairNanos(pairs);
  }

  /** Split in seconds and rest, or the product would overflow after three weeks of pairs. */
  private long pairNanos(long pairs) {
    long second = (long) NANOS_PER_SECOND;
    return pairs / pairsPerSecond * second + pairs % pairsPerSecond * second / pairsPerSecond;
  }

  /**
   * Pairs that may be handed over now; waits once for a lot of them, at most 50 ms.
   *
   * @param pairs handed over so far
   * @return at least 0
   */
  int due(long pairs) {
    if (speed == 0) {
      return Integer.MAX_VALUE;
    }
    if (!started) {
      started = true;
      startNanos = clock.nanoTime();
    }
    double missing = lotPairs - duePairs(pairs);
    if (missing > 0) {
      double nanos = missing * NANOS_PER_SECOND / (pairsPerSecond * speed);
      waitNanos.accept(Math.min((long) nanos + 1, SampleSource.LONGEST_WAIT_NANOS));
    }
    return (int) Math.max(0, Math.min(Integer.MAX_VALUE, duePairs(pairs)));
  }

  private double duePairs(long pairs) {
    double seconds = (clock.nanoTime() - startNanos) / NANOS_PER_SECOND;
    return Math.floor(seconds * speed * pairsPerSecond) - pairs;
  }
}
