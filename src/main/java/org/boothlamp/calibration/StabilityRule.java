package org.boothlamp.calibration;

/**
 * When a level counts as stable: the averaging time is full, the reading has not drifted, both its
 * halves scatter alike, and the converter is not at its end. All limits are common practice, no
 * source. Immutable.
 *
 * <p>Drift may be the largest of one count, {@value #SHARE_OF_FULL_SCALE} of full scale (a fifth of
 * the departure from a straight line that refuses a calibration) and three standard errors of the
 * drift itself, below which nothing can be told from noise.
 *
 * @param fullScaleCounts the sensor's full scale in counts, above 0
 */
public record StabilityRule(double fullScaleCounts) {

  /** Share of full scale that a level may drift. */
  public static final double SHARE_OF_FULL_SCALE = 0.0002;

  private static final double STANDARD_ERRORS = 3;
  private static final double LARGEST_RATIO_OF_HALVES = 1.5;
  private static final double LARGEST_CLIPPED_SHARE = 0.001;

  public StabilityRule {
    if (!(fullScaleCounts > 0)) {
      throw new IllegalArgumentException(
          "full scale must be above 0 counts: fullScaleCounts=" + fullScaleCounts);
    }
  }

  /** What keeps a level from being stable. */
  public enum Stability {
    STABLE,
    /** The averaging time is not over. */
    TOO_SHORT,
    DRIFTS,
    /** One half is noisier than the other: something was switched or touched. */
    UNEVEN,
    /** The converter's lowest or highest count was reached: the mean is wrong. */
    CLIPPED
  }

  /** What the figures say. */
  public Stability judge(WindowFigures figures) {
    if (figures.clipped() > LARGEST_CLIPPED_SHARE * figures.readings()) {
      return Stability.CLIPPED;
    }
    if (!figures.isFull()) {
      return Stability.TOO_SHORT;
    }
    if (Math.abs(figures.drift()) > driftLimit(figures)) {
      return Stability.DRIFTS;
    }
    return halvesAgree(figures) ? Stability.STABLE : Stability.UNEVEN;
  }

  /** The largest drift that passes, in counts. */
  public double driftLimit(WindowFigures figures) {
    double ofScale = Math.max(1, SHARE_OF_FULL_SCALE * fullScaleCounts);
    return Math.max(ofScale, STANDARD_ERRORS * figures.driftStandardError());
  }

  /** A count more is nothing: a quiet sensor toggles in one half and stands still in the other. */
  private static boolean halvesAgree(WindowFigures figures) {
    double first = figures.firstHalfDeviation();
    double second = figures.secondHalfDeviation();
    return Math.max(first, second) <= LARGEST_RATIO_OF_HALVES * Math.min(first, second) + 1;
  }
}
