package org.boothlamp.calibration;

import java.util.Collections;
import java.util.Comparator;
import java.util.List;

/**
 * A scale's errors at the points against the accuracy class, at the point that fares worst.
 * Immutable.
 *
 * @param decision for all points together
 * @param reference reference reading of the worst point
 * @param error what the scale shows there, less the reference
 * @param errorLimit the largest error the class allows there
 * @param guardBand U there, taken off the limit
 */
public record Conformity(
    Decision decision, double reference, double error, double errorLimit, double guardBand) {

  /**
   * The decision rule: guarded acceptance with a guard band of U on either side (JCGM 106:2012
   * 8.3.2, from memory).
   */
  public static final String RULE =
      "JCGM 106:2012, guarded acceptance: conforms if |error| <= limit - U, fails if |error| > limit"
          + " + U, guard band = U";

  /** What can be said of a scale. */
  public enum Decision {
    /** Every error is inside the limit by U at least. */
    CONFORMS,
    /** An error is too near the limit to tell. */
    UNDECIDED,
    /** An error is outside the limit by more than U. */
    FAILS
  }

  /** The largest |error| that is accepted at the worst point; below 0 if U is above the limit. */
  public double acceptanceLimit() {
    return errorLimit - guardBand;
  }

  /** The worst decision, and of points that share it the one with the least room left. */
  static Conformity worst(List<Conformity> points) {
    return Collections.max(
        points,
        Comparator.comparing(Conformity::decision).thenComparingDouble(Conformity::missingRoom));
  }

  static Conformity at(double reference, double error, double errorLimit, double expanded) {
    double size = Math.abs(error);
    Decision decision = Decision.UNDECIDED;
    if (size <= errorLimit - expanded) {
      decision = Decision.CONFORMS;
    } else if (size > errorLimit + expanded) {
      decision = Decision.FAILS;
    }
    return new Conformity(decision, reference, error, errorLimit, expanded);
  }

  private double missingRoom() {
    return Math.abs(error) - acceptanceLimit();
  }
}
