package org.boothlamp.report;

/**
 * Wilson's score interval of a share, without correction for continuity (Wilson 1927; method 3 in
 * Newcombe 1998, Statistics in Medicine 17:857). Immutable.
 *
 * @param low lower limit, 0 to 1
 * @param high upper limit, 0 to 1
 */
public record WilsonInterval(double low, double high) {

  /** Standard normal deviate of a two-sided 95 % interval. */
  private static final double Z = 1.959963984540054;

  /**
   * The 95 % interval.
   *
   * @param share seen, 0 to 1
   * @param trials how many independent ones it was seen in, above 0
   */
  public static WilsonInterval of(double share, int trials) {
    if (!(share >= 0 && share <= 1) || trials <= 0) {
      throw new IllegalArgumentException(
          "a share of 0 to 1 in at least one trial: share=" + share + ", trials=" + trials);
    }
    double hits = share * trials;
    double square = Z * Z;
    double middle = 2 * hits + square;
    double half = Z * Math.sqrt(square + 4 * hits * (1 - share));
    double whole = 2 * (trials + square);
    return new WilsonInterval(
        Math.max(0, (middle - half) / whole), Math.min(1, (middle + half) / whole));
  }
}
