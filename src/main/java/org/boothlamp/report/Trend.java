package org.boothlamp.report;

import java.util.List;
import org.apache.commons.math3.distribution.TDistribution;
import org.apache.commons.math3.stat.regression.SimpleRegression;

/**
 * How a share changes from run to run: the slope of an ordinary straight line through the runs in
 * their order, and the 95 % interval of that slope by Student's t. It says nothing of why.
 * Immutable.
 *
 * @param perTenRuns change of the share over ten runs; 0.05 is five percentage points
 * @param halfWidth half width of the 95 % interval of {@code perTenRuns}
 */
public record Trend(double perTenRuns, double halfWidth) {

  /** Fewer points than this give no interval worth the name; common practice, no source. */
  static final int LEAST_RUNS = 5;

  private static final double RUNS = 10;
  private static final double UPPER = 0.975;

  /** Which way it goes, as far as the interval allows to say. */
  public enum Direction {
    BETTER,
    WORSE,
    /** The interval holds zero. */
    CANNOT_TELL;

    /** The word for files. */
    public String word() {
      return switch (this) {
        case BETTER -> "better";
        case WORSE -> "worse";
        case CANNOT_TELL -> "cannot_tell";
      };
    }
  }

  /**
   * @param shares of the runs, 0 to 1, in order of time
   * @return null if there are too few
   */
  static Trend of(List<Double> shares) {
    if (shares.size() < LEAST_RUNS) {
      return null;
    }
    SimpleRegression line = new SimpleRegression();
    for (int i = 0; i < shares.size(); i++) {
      line.addData(i, shares.get(i));
    }
    double t = new TDistribution(null, shares.size() - 2.0).inverseCumulativeProbability(UPPER);
    return new Trend(RUNS * line.getSlope(), RUNS * t * line.getSlopeStdErr());
  }

  /** Which way it goes. */
  public Direction direction() {
    if (perTenRuns - halfWidth > 0) {
      return Direction.BETTER;
    }
    return perTenRuns + halfWidth < 0 ? Direction.WORSE : Direction.CANNOT_TELL;
  }
}
