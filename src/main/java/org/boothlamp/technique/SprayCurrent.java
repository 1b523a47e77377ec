package org.boothlamp.technique;

/**
 * The lowest current of spray transfer: mild-steel wire, argon with 2 % oxygen, electrode positive
 * (wire maker's handbook, the same as in the AWS Welding Handbook, from memory). More carbon
 * dioxide needs more; above about 15 % there is no spray.
 */
final class SprayCurrent {

  private static final double INCH_MM = 25.4;

  /** Inches and amps. */
  private static final double[][] TABLE = {
    {0.030, 150}, {0.035, 165}, {0.045, 220}, {0.052, 240}, {0.062, 275}
  };

  private SprayCurrent() {}

  /** Straight between the wires of the table; NaN outside it by more than a twentieth of a mm. */
  static double leastAmps(double wireMm) {
    double margin = 0.05;
    double inch = wireMm / INCH_MM;
    double[] first = TABLE[0];
    double[] last = TABLE[TABLE.length - 1];
    if (!(inch >= first[0] - margin / INCH_MM && inch <= last[0] + margin / INCH_MM)) {
      return Double.NaN;
    }
    int next = 1;
    while (next < TABLE.length - 1 && TABLE[next][0] < inch) {
      next++;
    }
    double[] low = TABLE[next - 1];
    double[] high = TABLE[next];
    double share = Math.max(0, Math.min(1, (inch - low[0]) / (high[0] - low[0])));
    return low[1] + share * (high[1] - low[1]);
  }
}
