package org.boothlamp.technique;

import java.util.Arrays;

/**
 * The course of one run in points of {@value #POINT_SECONDS} s, as the booth log keeps it: mean,
 * lowest and highest of amps and volts. All values are absolute: on {@code dc-} the signs are taken
 * off, and low and high change places. A point without current or without samples is NaN. The
 * arrays are its own. Immutable; safe to share.
 */
public final class RunProfile {

  /** Seconds of one point. */
  public static final double POINT_SECONDS = 0.05;

  /** Points in a second. */
  static final int PER_SECOND = 20;

  /** Below this a point is an arc-out: 60 % of the 15 A from which an arc counts as burning. */
  private static final double LEAST_AMPS = 9;

  /** The smaller peak over the larger from which a point swings through zero. */
  private static final double BOTH_WAYS_SHARE = 0.2;

  /** Amps or volts of a channel. */
  private record Course(double[] mean, double[] low, double[] high) {}

  private final Course amps;
  private final Course volts;
  private final boolean alternating;

  /**
   * A profile of a stored trace: signed values, electrode against work, one for each {@value
   * #POINT_SECONDS} s from the run's start, NaN where nothing was measured.
   *
   * @throws IllegalArgumentException if the arrays are not equally long
   */
  public RunProfile(
      double[] meanAmps,
      double[] lowestAmps,
      double[] highestAmps,
      double[] meanVolts,
      double[] lowestVolts,
      double[] highestVolts) {
    requireLength(meanAmps.length, lowestAmps, highestAmps, meanVolts, lowestVolts, highestVolts);
    alternating = isAlternating(lowestAmps, highestAmps);
    amps = absolute(meanAmps, lowestAmps, highestAmps, alternating);
    volts = absolute(meanVolts, lowestVolts, highestVolts, alternating);
    for (int k = 0; k < size(); k++) {
      if (!(amps.high[k] >= LEAST_AMPS) || (!alternating && amps.mean[k] < LEAST_AMPS)) {
        forget(amps, k);
        forget(volts, k);
      }
    }
  }

  private static void requireLength(int points, double[]... arrays) {
    for (double[] array : arrays) {
      if (array.length != points) {
        throw new IllegalArgumentException(
            "the arrays of a trace must be equally long: " + points + " and " + array.length);
      }
    }
  }

  private static boolean isAlternating(double[] low, double[] high) {
    int bothWays = 0;
    int measured = 0;
    for (int k = 0; k < low.length; k++) {
      double smaller = Math.min(-low[k], high[k]);
      double larger = Math.max(-low[k], high[k]);
      measured += larger >= LEAST_AMPS ? 1 : 0;
      bothWays += larger >= LEAST_AMPS && smaller > BOTH_WAYS_SHARE * larger ? 1 : 0;
    }
    return 2 * bothWays > measured;
  }

  private static Course absolute(double[] mean, double[] low, double[] high, boolean alternating) {
    Course course = new Course(mean.clone(), low.clone(), high.clone());
    for (int k = 0; k < mean.length; k++) {
      if (!alternating && mean[k] < 0) {
        course.mean[k] = -mean[k];
        course.low[k] = -high[k];
        course.high[k] = -low[k];
      }
    }
    return course;
  }

  private static void forget(Course course, int k) {
    course.mean[k] = Double.NaN;
    course.low[k] = Double.NaN;
    course.high[k] = Double.NaN;
  }

  /** Number of points. */
  public int size() {
    return amps.mean.length;
  }

  /** Length, s. */
  public double seconds() {
    return size() * POINT_SECONDS;
  }

  /**
   * True if the current swung through zero: then the means of a point say nothing, as a trace keeps
   * no RMS.
   */
  public boolean isAlternating() {
    return alternating;
  }

  /** True if an arc burned in this point. */
  public boolean isOn(int point) {
    return !Double.isNaN(amps.mean[point]);
  }

  /** Mean current of a point, A; NaN while no arc burned. */
  public double amps(int point) {
    return amps.mean[point];
  }

  /** Lowest current of a point, A; signed if alternating. */
  public double lowestAmps(int point) {
    return amps.low[point];
  }

  /** Highest current of a point, A. */
  public double highestAmps(int point) {
    return amps.high[point];
  }

  /** Mean voltage of a point, V; NaN while no arc burned. */
  public double volts(int point) {
    return volts.mean[point];
  }

  /** Lowest voltage of a point, V; signed if alternating. */
  public double lowestVolts(int point) {
    return volts.low[point];
  }

  /** Highest voltage of a point, V. */
  public double highestVolts(int point) {
    return volts.high[point];
  }

  /** All mean currents, A; a copy. */
  double[] allAmps() {
    return Arrays.copyOf(amps.mean, size());
  }

  /** All mean voltages, V; a copy. */
  double[] allVolts() {
    return Arrays.copyOf(volts.mean, size());
  }

  /** The point at a time, inside the run. */
  int pointAt(double seconds) {
    return (int) Math.max(0, Math.min(size(), Math.round(seconds * PER_SECOND)));
  }
}
