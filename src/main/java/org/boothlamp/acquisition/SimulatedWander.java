package org.boothlamp.acquisition;

import java.util.SplittableRandom;

/**
 * A quantity that wanders about zero and is drawn back to it: an Ornstein-Uhlenbeck process in its
 * exact discrete form (Gillespie 1996), so its spread does not depend on the tick. Confined to one
 * thread.
 */
final class SimulatedWander {

  private final double kept;
  private final double fresh;
  private double value;

  /**
   * A wandering value of unit spread.
   *
   * @param tickSeconds time between two calls of {@link #next}
   * @param memorySeconds time after which it has forgotten 63 % of where it was
   */
  SimulatedWander(double tickSeconds, double memorySeconds) {
    kept = Math.exp(-tickSeconds / memorySeconds);
    fresh = Math.sqrt(1 - kept * kept);
  }

  void clear() {
    value = 0;
  }

  /** Goes on by one tick and answers where it is, in standard deviations. */
  double next(SplittableRandom random) {
    value = kept * value + fresh * random.nextGaussian();
    return value;
  }
}
