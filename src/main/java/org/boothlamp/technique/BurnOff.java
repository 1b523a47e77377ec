package org.boothlamp.technique;

import java.util.List;
import org.apache.commons.math3.analysis.UnivariateFunction;
import org.apache.commons.math3.analysis.solvers.BrentSolver;

/**
 * How fast a wire melts: {@code feed = alpha I + beta l I^2}, the heat of the arc and that of the
 * current in the stick-out l (form: Lesnewich; from memory). At a known feed the amps tell the
 * stick-out. A table's coefficients give the length of wire between contact tip and arc; those that
 * a school finds at measured distances of the contact tip give that distance. Immutable.
 *
 * @param name of the wire
 * @param wireMm diameter
 * @param alphaMmPerAs mm/(A s), above 0
 * @param betaPerA2s 1/(A^2 s), above 0
 * @param alphaUncertainty standard uncertainty of alpha, in its unit
 * @param betaUncertainty likewise of beta
 * @param lowAmps lowest current for which it holds
 * @param highAmps highest
 * @param origin where the numbers come from
 */
public record BurnOff(
    String name,
    double wireMm,
    double alphaMmPerAs,
    double betaPerA2s,
    double alphaUncertainty,
    double betaUncertainty,
    double lowAmps,
    double highAmps,
    String origin) {

  /** Longest stick-out that is looked for, mm. */
  public static final double LONGEST_MM = 60;

  /** Feeds are set and kept to about this share, as a standard uncertainty; common practice. */
  public static final double FEED_SHARE = 0.02;

  private static final int MOST_EVALUATIONS = 100;
  private static final double HIGHEST_AMPS = 1_000;
  private static final double ACCURACY = 1e-9;

  /** Two sets of coefficients for 1.0 mm wire in the literature differ by about this much. */
  private static final double TABLE_SHARE = 0.15;

  private static final double TABLE_WIRE_MM = 1.2;
  private static final double TABLE_ALPHA = 0.3;
  private static final double TABLE_BETA = 5e-5;

  /** Solid mild-steel wires. */
  private static final List<BurnOff> TABLE =
      List.of(
          solidSteel(0.8, 50, 180),
          solidSteel(0.9, 60, 220),
          solidSteel(1.0, 70, 260),
          solidSteel(1.2, 100, 320),
          solidSteel(1.6, 180, 450));

  private static final double SAME_WIRE_MM = 0.03;

  public BurnOff {
    if (!(alphaMmPerAs > 0) || !(betaPerA2s > 0)) {
      throw new IllegalArgumentException(
          "burn-off coefficients must be above 0: alpha="
              + alphaMmPerAs
              + " mm/(A s), beta="
              + betaPerA2s
              + " 1/(A^2 s)");
    }
  }

  /** By volume: alpha goes with one over the wire's area, beta with one over its square. */
  private static BurnOff solidSteel(double wireMm, double lowAmps, double highAmps) {
    double area = TABLE_WIRE_MM * TABLE_WIRE_MM / (wireMm * wireMm);
    double alpha = TABLE_ALPHA * area;
    double beta = TABLE_BETA * area * area;
    return new BurnOff(
        "solid mild steel",
        wireMm,
        alpha,
        beta,
        TABLE_SHARE * alpha,
        TABLE_SHARE * beta,
        lowAmps,
        highAmps,
        wireMm == TABLE_WIRE_MM
            ? "argon-rich gas, electrode positive; from memory"
            : "from those of 1.2 mm by the wire's area; from memory");
  }

  /** The table's coefficients for a solid mild-steel wire of this diameter, or null. */
  public static BurnOff ofSolidSteel(double wireMm) {
    for (BurnOff wire : TABLE) {
      if (Math.abs(wire.wireMm - wireMm) <= SAME_WIRE_MM) {
        return wire;
      }
    }
    return null;
  }

  /** True if the coefficients hold for this current. */
  public boolean holdsAt(double amps) {
    return amps >= lowAmps && amps <= highAmps;
  }

  /**
   * Feed that keeps the arc's length, mm/s.
   *
   * @param meanAmps mean current: the arc's heat goes with it
   * @param rmsAmps RMS current: resistance's heat goes with its square
   */
  public double feedMmPerS(double meanAmps, double rmsAmps, double stickOutMm) {
    return alphaMmPerAs * meanAmps + betaPerA2s * stickOutMm * rmsAmps * rmsAmps;
  }

  /** Current at a feed and a stick-out, A; NaN if there is none up to 1000 A. */
  public double amps(double feedMmPerS, double stickOutMm) {
    return root(amps -> feedMmPerS(amps, amps, stickOutMm) - feedMmPerS, HIGHEST_AMPS);
  }

  /**
   * Stick-out at a feed, mm.
   *
   * @param ampsUncertainty standard uncertainty of both currents, A
   * @return unknown if no length from 0 to {@value #LONGEST_MM} mm melts the wire at this feed, or
   *     the coefficients do not hold there
   */
  public Estimate stickOutMm(
      double feedMmPerS, double meanAmps, double rmsAmps, double ampsUncertainty) {
    double length = root(mm -> feedMmPerS(meanAmps, rmsAmps, mm) - feedMmPerS, LONGEST_MM);
    if (Double.isNaN(length) || !holdsAt(meanAmps)) {
      return Estimate.UNKNOWN;
    }
    double perMm = betaPerA2s * rmsAmps * rmsAmps;
    double ofAmps = (alphaMmPerAs + 2 * betaPerA2s * length * rmsAmps) * ampsUncertainty;
    double ofAlpha = meanAmps * alphaUncertainty;
    double ofBeta = length * rmsAmps * rmsAmps * betaUncertainty;
    double ofFeed = FEED_SHARE * feedMmPerS;
    return new Estimate(
        length, Math.hypot(Math.hypot(ofAmps, ofAlpha), Math.hypot(ofBeta, ofFeed)) / perMm);
  }

  private static double root(UnivariateFunction function, double high) {
    if (function.value(0) * function.value(high) > 0) {
      return Double.NaN;
    }
    return new BrentSolver(ACCURACY).solve(MOST_EVALUATIONS, function, 0, high);
  }
}
