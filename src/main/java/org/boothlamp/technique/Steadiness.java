package org.boothlamp.technique;

import java.util.Arrays;
import org.boothlamp.procedure.Quantity;

/**
 * How steady the hand was: the volts of stick and TIG, the amps of wire, after the arc's own ripple
 * is taken out. Runs of one procedure can be compared by it. NaN where the run is too short.
 * Immutable.
 *
 * @param quantity volts or amps
 * @param level median, V or A
 * @param spread standard deviation of what is slower than half a second, about the drift, V or A
 * @param driftPerMinute V or A a minute, robust
 * @param steadyAfterSeconds time from the strike until amps and volts stayed near their levels for
 *     a second; NaN if they never did
 * @param restarts arc-outs inside the run
 */
public record Steadiness(
    Quantity quantity,
    double level,
    double spread,
    double driftPerMinute,
    double steadyAfterSeconds,
    int restarts) {

  private static final int BLOCK_POINTS = RunProfile.PER_SECOND / 2;
  private static final int LEAST_BLOCKS = 4;
  private static final double SECONDS_PER_MINUTE = 60;

  /** Near its level: within this share of it; common practice, no source. */
  private static final double NEAR_SHARE = 0.05;

  /** Spread as a share of the level, percent: comparable between settings. */
  public double spreadPercent() {
    return 100 * spread / level;
  }

  static Steadiness unknown(Quantity quantity, int restarts) {
    return new Steadiness(quantity, Double.NaN, Double.NaN, Double.NaN, Double.NaN, restarts);
  }

  /**
   * @param quantity volts or amps
   * @param use the points between start and crater fill
   */
  static Steadiness of(Quantity quantity, RunProfile profile, boolean[] use, int restarts) {
    double[] values = quantity == Quantity.VOLTS ? profile.allVolts() : profile.allAmps();
    Course course = Course.of(values, use);
    if (course.count < LEAST_BLOCKS) {
      return unknown(quantity, restarts);
    }
    double[] means = Arrays.copyOf(course.means, course.count);
    double[] seconds = Arrays.copyOf(course.seconds, course.count);
    double level = RobustLine.median(means);
    RobustLine drift = RobustLine.through(seconds, means);
    double spread = spread(means, seconds, drift, course.rippleVariance / course.count);
    return new Steadiness(
        quantity,
        level,
        spread,
        SECONDS_PER_MINUTE * drift.slope(),
        steadyAfter(profile),
        restarts);
  }

  private static double spread(
      double[] means, double[] seconds, RobustLine drift, double rippleVariance) {
    double squares = 0;
    for (int k = 0; k < means.length; k++) {
      double left = means[k] - drift.intercept() - drift.slope() * seconds[k];
      squares += left * left;
    }
    double variance = squares / (means.length - 1);
    return Math.sqrt(Math.max(0, variance - rippleVariance / BLOCK_POINTS));
  }

  /** The first moment from which two half seconds in a row are near the level of the run. */
  private static double steadyAfter(RunProfile profile) {
    double[] amps = profile.allAmps();
    double[] volts = profile.allVolts();
    double ampsLevel = levelOf(amps);
    double voltsLevel = levelOf(volts);
    for (int from = 0; from + 2 * BLOCK_POINTS <= amps.length; from++) {
      if (isNear(amps, from, ampsLevel) && isNear(volts, from, voltsLevel)) {
        return from * RunProfile.POINT_SECONDS;
      }
    }
    return Double.NaN;
  }

  private static double levelOf(double[] values) {
    return RobustLine.median(Arrays.stream(values).filter(value -> !Double.isNaN(value)).toArray());
  }

  private static boolean isNear(double[] values, int from, double level) {
    double near = NEAR_SHARE * level;
    return Math.abs(mean(values, from) - level) <= near
        && Math.abs(mean(values, from + BLOCK_POINTS) - level) <= near;
  }

  private static double mean(double[] values, int from) {
    double sum = 0;
    for (int k = from; k < from + BLOCK_POINTS; k++) {
      sum += values[k];
    }
    return sum / BLOCK_POINTS;
  }

  /** Means of half seconds, and the variance of the points about them. */
  private static final class Course {
    private final double[] means;
    private final double[] seconds;
    private int count;

    /** Sum over the blocks. */
    private double rippleVariance;

    private Course(int most) {
      means = new double[most];
      seconds = new double[most];
    }

    static Course of(double[] values, boolean[] use) {
      Course course = new Course(values.length / BLOCK_POINTS + 1);
      for (int from = 0; from + BLOCK_POINTS <= values.length; from += BLOCK_POINTS) {
        course.take(values, use, from);
      }
      return course;
    }

    private void take(double[] values, boolean[] use, int from) {
      double mean = mean(values, from);
      if (Double.isNaN(mean) || !use[from] || !use[from + BLOCK_POINTS - 1]) {
        return;
      }
      double squares = 0;
      for (int k = from; k < from + BLOCK_POINTS; k++) {
        squares += (values[k] - mean) * (values[k] - mean);
      }
      rippleVariance += squares / (BLOCK_POINTS - 1);
      means[count] = mean;
      seconds[count++] = from * RunProfile.POINT_SECONDS;
    }
  }
}
