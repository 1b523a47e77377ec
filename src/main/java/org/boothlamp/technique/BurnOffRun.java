package org.boothlamp.technique;

/**
 * A run at a measured distance, for a school's own burn-off coefficients. Immutable.
 *
 * @param distanceMm from contact tip to work, or the stick-out, as the school wants it told later
 * @param distanceUncertaintyMm standard uncertainty of that
 * @param feedMmPerS measured feed
 * @param meanAmps mean current
 * @param rmsAmps RMS current
 * @param ampsUncertainty standard uncertainty of both
 */
public record BurnOffRun(
    double distanceMm,
    double distanceUncertaintyMm,
    double feedMmPerS,
    double meanAmps,
    double rmsAmps,
    double ampsUncertainty) {

  /** Least ratio of the two distances: nearer than that the two equations are nearly one. */
  public static final double LEAST_RATIO = 1.4;

  /** The currents may be outside those of the two runs by this share. */
  private static final double BEYOND = 0.25;

  public BurnOffRun {
    if (!(distanceMm > 0) || !(feedMmPerS > 0) || !(meanAmps > 0) || !(rmsAmps >= meanAmps)) {
      throw new IllegalArgumentException(
          "a burn-off run needs a distance, a feed and a current above 0, and RMS amps not below"
              + " the mean: distanceMm="
              + distanceMm
              + ", feedMmPerS="
              + feedMmPerS
              + ", meanAmps="
              + meanAmps
              + ", rmsAmps="
              + rmsAmps);
    }
  }

  /**
   * The coefficients that two runs give.
   *
   * @throws IllegalArgumentException if the distances are too near to each other, or no positive
   *     coefficients fit
   */
  public static BurnOff solve(String name, double wireMm, BurnOffRun one, BurnOffRun other) {
    double ratio = one.distanceMm / other.distanceMm;
    if (Math.max(ratio, 1 / ratio) < LEAST_RATIO) {
      throw new IllegalArgumentException(
          "the two distances must differ by a factor of "
              + LEAST_RATIO
              + ": "
              + one.distanceMm
              + " mm and "
              + other.distanceMm
              + " mm; weld one run nearer or farther");
    }
    double[] best = coefficients(one, other);
    if (!(best[0] > 0) || !(best[1] > 0)) {
      throw new IllegalArgumentException(
          "the two runs fit no burn-off: alpha="
              + best[0]
              + " mm/(A s), beta="
              + best[1]
              + " 1/(A^2 s); a longer stick-out must take fewer amps at the same feed: check"
              + " distances and feeds");
    }
    double[] uncertainty = uncertainty(one, other, best);
    return new BurnOff(
        name,
        wireMm,
        best[0],
        best[1],
        uncertainty[0],
        uncertainty[1],
        (1 - BEYOND) * Math.min(one.meanAmps, other.meanAmps),
        (1 + BEYOND) * Math.max(one.meanAmps, other.meanAmps),
        "two runs of the school");
  }

  /** Two equations, two unknowns. */
  private static double[] coefficients(BurnOffRun one, BurnOffRun other) {
    double determinant = one.meanAmps * other.heat() - other.meanAmps * one.heat();
    return new double[] {
      (one.feedMmPerS * other.heat() - other.feedMmPerS * one.heat()) / determinant,
      (one.meanAmps * other.feedMmPerS - other.meanAmps * one.feedMmPerS) / determinant
    };
  }

  private double heat() {
    return distanceMm * rmsAmps * rmsAmps;
  }

  /** To first order, one input after the other (GUM 5.1.2). */
  private static double[] uncertainty(BurnOffRun one, BurnOffRun other, double[] best) {
    double[] squares = new double[2];
    for (BurnOffRun moved : one.movedByUncertainty()) {
      addSquares(squares, coefficients(moved, other), best);
    }
    for (BurnOffRun moved : other.movedByUncertainty()) {
      addSquares(squares, coefficients(one, moved), best);
    }
    return new double[] {Math.sqrt(squares[0]), Math.sqrt(squares[1])};
  }

  private BurnOffRun[] movedByUncertainty() {
    return new BurnOffRun[] {
      new BurnOffRun(
          distanceMm + distanceUncertaintyMm, 0, feedMmPerS, meanAmps, rmsAmps, ampsUncertainty),
      new BurnOffRun(
          distanceMm, 0, feedMmPerS * (1 + BurnOff.FEED_SHARE), meanAmps, rmsAmps, ampsUncertainty),
      new BurnOffRun(
          distanceMm,
          0,
          feedMmPerS,
          meanAmps + ampsUncertainty,
          rmsAmps + ampsUncertainty,
          ampsUncertainty)
    };
  }

  private static void addSquares(double[] squares, double[] moved, double[] best) {
    for (int k = 0; k < squares.length; k++) {
      squares[k] += (moved[k] - best[k]) * (moved[k] - best[k]);
    }
  }
}
