package org.boothlamp.technique;

/**
 * Amps and volts of some points of a run, and how certain their means are. Immutable.
 *
 * @param amps mean, A; NaN if unknown
 * @param volts mean, V
 * @param ampsUncertainty standard uncertainty of the mean from its own scatter, A
 * @param voltsUncertainty likewise, V
 * @param points how many
 */
record WorkingPoint(
    double amps, double volts, double ampsUncertainty, double voltsUncertainty, int points) {

  /** Blocks of half a second: a hand wanders more slowly than that. */
  private static final int BLOCK_POINTS = RunProfile.PER_SECOND / 2;

  /** The hand's memory makes neighbouring blocks alike: a mean of them is less certain. */
  private static final double MEMORY = 1.5;

  /** A mean of fewer blocks than this says little of its scatter. */
  private static final int LEAST_BLOCKS = 3;

  /** Scatter that is always assumed, as a share: rounding, supply ripple. */
  private static final double LEAST_SHARE = 0.002;

  static final WorkingPoint UNKNOWN =
      new WorkingPoint(Double.NaN, Double.NaN, Double.NaN, Double.NaN, 0);

  /** The mean of the points in use; their scatter too. */
  static WorkingPoint of(RunProfile profile, boolean[] use) {
    int points = 0;
    double amps = 0;
    double volts = 0;
    for (int k = 0; k < use.length; k++) {
      if (use[k] && profile.isOn(k)) {
        points++;
        amps += profile.amps(k);
        volts += profile.volts(k);
      }
    }
    if (points == 0) {
      return UNKNOWN;
    }
    Blocks blocks = Blocks.of(profile, use, BLOCK_POINTS);
    double root = MEMORY / Math.sqrt(Math.max(1, (double) points / BLOCK_POINTS));
    return new WorkingPoint(
        amps / points,
        volts / points,
        root * scatter(blocks.amps(), amps / points),
        root * scatter(blocks.volts(), volts / points),
        points);
  }

  /** Standard deviation of block means, at least a floor; unknown with too few blocks. */
  private static double scatter(double[] blocks, double mean) {
    double floor = LEAST_SHARE * mean;
    if (blocks.length < LEAST_BLOCKS) {
      return floor;
    }
    double middle = RobustLine.median(blocks);
    double robust = RobustLine.NORMAL_OVER_MEDIAN * RobustLine.medianDistance(blocks, middle);
    return Math.max(floor, robust);
  }

  /**
   * The same mean with the scatter of a longer part: a spell is too short to show its own.
   *
   * @param steady the part whose scatter it has
   */
  WorkingPoint withScatterOf(WorkingPoint steady) {
    double root = Math.sqrt((double) steady.points / Math.max(1, points));
    return new WorkingPoint(
        amps,
        volts,
        Math.max(ampsUncertainty, root * steady.ampsUncertainty),
        Math.max(voltsUncertainty, root * steady.voltsUncertainty),
        points);
  }

  boolean isKnown() {
    return points > 0;
  }
}
