package org.boothlamp.calibration;

import java.util.List;
import java.util.function.DoublePredicate;

/**
 * When a run of checks is no longer chance alone: the Western Electric rules and the rule of six in
 * a row, as the NIST/SEMATECH e-Handbook of Statistical Methods lists them in 6.3.2 (from memory).
 * Each looks at the end of the run only, so that a spell of last year does not alarm for ever.
 */
public enum ControlRule {
  BEYOND_THREE_SIGMA("the last check is more than 3 standard deviations off the mean", 1, 1, 3),
  TWO_OF_THREE(
      "two of the last three are more than 2 standard deviations off, on one side", 2, 3, 2),
  FOUR_OF_FIVE(
      "four of the last five are more than 1 standard deviation off, on one side", 4, 5, 1),
  EIGHT_ON_ONE_SIDE("the last eight lie on one side of the mean", 8, 8, 0),
  SIX_IN_A_ROW("the last six rise, or fall, one after the other", 6, 6, Double.NaN);

  private final String words;
  private final int needed;
  private final int among;
  private final double sigmas;

  ControlRule(String words, int needed, int among, double sigmas) {
    this.words = words;
    this.needed = needed;
    this.among = among;
    this.sigmas = sigmas;
  }

  /** What was seen, for people. */
  public String words() {
    return words;
  }

  /**
   * True if the end of the run breaks this rule.
   *
   * @param deviations distances from the centre in standard deviations, in order of time
   */
  boolean isBrokenBy(List<Double> deviations) {
    if (deviations.size() < among) {
      return false;
    }
    List<Double> end = deviations.subList(deviations.size() - among, deviations.size());
    if (this == SIX_IN_A_ROW) {
      return isMonotonous(end, 1) || isMonotonous(end, -1);
    }
    return isCrowded(end, deviation -> deviation > sigmas)
        || isCrowded(end, deviation -> deviation < -sigmas);
  }

  private boolean isCrowded(List<Double> end, DoublePredicate beyond) {
    double last = end.get(end.size() - 1);
    return beyond.test(last)
        && end.stream().filter(deviation -> beyond.test(deviation)).count() >= needed;
  }

  private static boolean isMonotonous(List<Double> end, int sign) {
    for (int i = 1; i < end.size(); i++) {
      if (!(sign * (end.get(i) - end.get(i - 1)) > 0)) {
        return false;
      }
    }
    return true;
  }
}
