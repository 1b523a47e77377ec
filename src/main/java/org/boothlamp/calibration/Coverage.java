package org.boothlamp.calibration;

import org.apache.commons.math3.distribution.NormalDistribution;
import org.apache.commons.math3.distribution.TDistribution;

/** From a combined standard uncertainty to an interval (JCGM 100:2008 annex G). */
public final class Coverage {

  /** The probability at which many degrees of freedom give k = 2. */
  public static final double PROBABILITY = 0.954499736103642;

  /** Above this Student's t and the normal distribution agree to six digits. */
  private static final double MANY = 1e6;

  private Coverage() {}

  /**
   * Effective degrees of freedom by Welch and Satterthwaite (JCGM 100:2008 G.2b), not rounded.
   *
   * @param uncertainties standard uncertainties that do not depend on each other
   * @param freedoms their degrees of freedom, which may be infinite
   * @return infinite if nothing uncertain is estimated
   */
  public static double effectiveFreedom(double[] uncertainties, double[] freedoms) {
    double variance = 0;
    double estimated = 0;
    for (int i = 0; i < uncertainties.length; i++) {
      double square = uncertainties[i] * uncertainties[i];
      variance += square;
      estimated += square * square / freedoms[i];
    }
    return estimated > 0 ? variance * variance / estimated : Double.POSITIVE_INFINITY;
  }

  /**
   * The coverage factor k: two-sided Student's t, the degrees of freedom cut down to a whole number
   * (JCGM 100:2008 G.4.1).
   *
   * @param freedom at least 1, may be infinite
   * @param probability inside the interval, between 0 and 1
   */
  public static double factor(double freedom, double probability) {
    double upper = (1 + probability) / 2;
    if (freedom > MANY) {
      return new NormalDistribution(null, 0, 1).inverseCumulativeProbability(upper);
    }
    double whole = Math.max(1, Math.floor(freedom));
    return new TDistribution(null, whole).inverseCumulativeProbability(upper);
  }
}
