package org.boothlamp.signal;

/**
 * When a droplet bridges the arc: volts below a threshold, in the direction of the current, for at
 * least a least duration, after which the arc burns again. A contact is a resistance, so volts
 * against the current are no short circuit but disturbance, as from a high-frequency start.
 * Immutable.
 *
 * @param volts threshold on the voltage, above 0
 * @param flowingAmps absolute current from which current counts as flowing, above 0
 */
public record ShortCircuitRule(double volts, double flowingAmps) {

  /** Below this rate a short circuit of {@link #LEAST_SECONDS} can fall between two pairs. */
  public static final int LEAST_PAIRS_PER_SECOND = 2_000;

  /** A contact shorter than this is not counted, seconds. */
  public static final double LEAST_SECONDS = 0.0005;

  /** Share of {@link #volts} that noise may reach on the other side of zero. */
  static final double NOISE_SHARE = 0.125;

  public ShortCircuitRule {
    if (!(volts > 0) || !(flowingAmps > 0)) {
      throw new IllegalArgumentException(
          "short-circuit thresholds must be above 0: volts=" + volts + ", amps=" + flowingAmps);
    }
  }

  /** True if a source of this rate can count short circuits at all. */
  public static boolean isMeasurableAt(int pairsPerSecond) {
    return pairsPerSecond >= LEAST_PAIRS_PER_SECOND;
  }

  /** True if this current, A, counts as flowing. */
  public boolean isFlowing(double amps) {
    return Math.abs(amps) >= flowingAmps;
  }

  /** True if a pair of these signed amps and volts may belong to a short circuit. */
  public boolean isShorted(double amps, double voltsAgainstWork) {
    double along = amps < 0 ? -voltsAgainstWork : voltsAgainstWork;
    return isFlowing(amps) && along < volts && along > -NOISE_SHARE * volts;
  }
}
