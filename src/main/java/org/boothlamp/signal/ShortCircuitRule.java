package org.boothlamp.signal;

/**
 * When a droplet bridges the arc: volts below a threshold for at least a least duration while
 * current flows. Immutable.
 *
 * @param volts threshold on the absolute voltage, above 0
 * @param flowingAmps absolute current from which current counts as flowing, above 0
 */
public record ShortCircuitRule(double volts, double flowingAmps) {

  /** Below this rate a short circuit of {@link #LEAST_SECONDS} can fall between two pairs. */
  public static final int LEAST_PAIRS_PER_SECOND = 2_000;

  /** A contact shorter than this is not counted, seconds. */
  public static final double LEAST_SECONDS = 0.0005;

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
}
