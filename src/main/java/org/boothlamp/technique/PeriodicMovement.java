package org.boothlamp.technique;

import java.util.Arrays;

/**
 * Whipping or weaving: the arc's length goes up and down in a steady beat. Found by autocorrelation
 * of the volts (constant current) or amps (constant voltage) of half-overlapping stretches.
 * Immutable.
 *
 * @param periodSeconds time of one movement, median over the stretches that have a beat; NaN if
 *     none
 * @param strength autocorrelation at that lag, 0 to 1, median likewise
 * @param periodic one value a point: true where it is inside a stretch that has a beat
 */
public record PeriodicMovement(double periodSeconds, double strength, boolean[] periodic) {

  /** Length of a stretch: some movements of each period looked for. */
  private static final int STRETCH_POINTS = 6 * RunProfile.PER_SECOND;

  /** Movements from 0.3 s to 2 s; common practice, no source. */
  private static final int LEAST_LAG = RunProfile.PER_SECOND * 3 / 10;

  private static final int MOST_LAG = 2 * RunProfile.PER_SECOND;

  /** Well above what a hand without a beat reaches by chance. */
  private static final double LEAST_STRENGTH = 0.5;

  private static final double LEAST_STRENGTH_AT_THE_NEXT = 0.3;

  private static final double AS_LIKE = 0.85;

  /** Share of a spell that must be inside stretches with a beat. */
  private static final double MOST_OF_A_SPELL = 0.8;

  static final PeriodicMovement NONE = new PeriodicMovement(Double.NaN, 0, new boolean[0]);

  public PeriodicMovement {
    periodic = periodic.clone();
  }

  @Override
  public boolean[] periodic() {
    return periodic.clone();
  }

  /** True if a beat was found at all. */
  public boolean isFound() {
    return !Double.isNaN(periodSeconds);
  }

  /** True if a spell lies inside a beat and is no longer than one movement of it. */
  boolean explains(Spell spell) {
    if (!(spell.seconds() <= periodSeconds)) {
      return false;
    }
    int from = (int) Math.round(spell.startSeconds() * RunProfile.PER_SECOND);
    int until = Math.min(periodic.length, (int) (spell.endSeconds() * RunProfile.PER_SECOND));
    int inside = 0;
    for (int k = from; k < until; k++) {
      inside += periodic[k] ? 1 : 0;
    }
    return until > from && inside >= MOST_OF_A_SPELL * (until - from);
  }

  /** Looks for a beat in one value a point; NaN where unknown. */
  static PeriodicMovement in(double[] values) {
    boolean[] periodic = new boolean[values.length];
    double[] lags = new double[values.length / (STRETCH_POINTS / 2) + 1];
    double[] strengths = new double[lags.length];
    int found = 0;
    for (int from = 0; from + STRETCH_POINTS <= values.length; from += STRETCH_POINTS / 2) {
      double[] stretch = Arrays.copyOfRange(values, from, from + STRETCH_POINTS);
      int lag = beat(stretch);
      if (lag > 0) {
        Arrays.fill(periodic, from, from + STRETCH_POINTS, true);
        lags[found] = lag;
        strengths[found++] = autocorrelation(stretch, lag);
      }
    }
    return found == 0
        ? NONE
        : new PeriodicMovement(
            RobustLine.median(Arrays.copyOf(lags, found)) / RunProfile.PER_SECOND,
            RobustLine.median(Arrays.copyOf(strengths, found)),
            periodic);
  }

  /** The lag of the first high peak after the first fall below zero; 0 if it is no beat. */
  private static int beat(double[] stretch) {
    if (!withoutLevel(stretch)) {
      return 0;
    }
    int lag = 1;
    while (lag <= MOST_LAG && autocorrelation(stretch, lag) > 0) {
      lag++;
    }
    int best = MOST_LAG + 1;
    for (lag = Math.max(lag, LEAST_LAG); lag <= MOST_LAG; lag++) {
      if (autocorrelation(stretch, lag) > autocorrelation(stretch, best)) {
        best = lag;
      }
    }
    int first = firstLike(stretch, Math.max(LEAST_LAG, 2), best);
    return isBeat(stretch, first) ? first : 0;
  }

  /** Two and three movements later a beat is as like itself as after one. */
  private static int firstLike(double[] stretch, int from, int best) {
    double enough = AS_LIKE * autocorrelation(stretch, best);
    for (int lag = from; lag < best; lag++) {
      double here = autocorrelation(stretch, lag);
      if (here >= enough
          && here >= autocorrelation(stretch, lag - 1)
          && here >= autocorrelation(stretch, lag + 1)) {
        return lag;
      }
    }
    return best;
  }

  /** A peak and not the slope of one, and the movement after the next like it as well. */
  private static boolean isBeat(double[] stretch, int lag) {
    double here = autocorrelation(stretch, lag);
    return lag <= MOST_LAG
        && here >= LEAST_STRENGTH
        && here >= autocorrelation(stretch, lag - 1)
        && here >= autocorrelation(stretch, lag + 1)
        && autocorrelation(stretch, 2 * lag) >= LEAST_STRENGTH_AT_THE_NEXT;
  }

  /** Takes off a straight line; false if a value is unknown or nothing moves. */
  private static boolean withoutLevel(double[] stretch) {
    double[] place = new double[stretch.length];
    Arrays.setAll(place, k -> k);
    for (double value : stretch) {
      if (Double.isNaN(value)) {
        return false;
      }
    }
    RobustLine line = RobustLine.through(place, stretch);
    double sum = 0;
    for (int k = 0; k < stretch.length; k++) {
      stretch[k] -= line.intercept() + line.slope() * k;
      sum += stretch[k] * stretch[k];
    }
    return sum > 0;
  }

  /** Not biased by the shorter overlap: a perfect beat has 1 at each period. */
  private static double autocorrelation(double[] values, int lag) {
    double product = 0;
    double one = 0;
    double other = 0;
    for (int k = 0; k + lag < values.length; k++) {
      product += values[k] * values[k + lag];
      one += values[k] * values[k];
      other += values[k + lag] * values[k + lag];
    }
    return product / Math.sqrt(one * other);
  }
}
