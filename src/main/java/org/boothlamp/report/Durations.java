package org.boothlamp.report;

/** Lengths of time for people. */
final class Durations {

  private static final int SECONDS_PER_HOUR = 3_600;

  private Durations() {}

  /**
   * A length with its unit, in the form that reads best: "3.4 s", "8:41 min", "1:02:03 h"; "?" if
   * it is not known (NaN). Each form starts where the one before would round up to it.
   */
  static String words(double seconds) {
    if (Double.isNaN(seconds) || Math.round(seconds * 10) < 600) {
      return Numbers.fixed(seconds, 1) + " s";
    }
    long whole = Math.round(seconds);
    StringBuilder out = new StringBuilder(12);
    if (whole < SECONDS_PER_HOUR) {
      out.append(whole / 60).append(':');
      return Numbers.appendPadded(out, whole % 60, 2).append(" min").toString();
    }
    out.append(whole / SECONDS_PER_HOUR).append(':');
    Numbers.appendPadded(out, whole / 60 % 60, 2).append(':');
    return Numbers.appendPadded(out, whole % 60, 2).append(" h").toString();
  }
}
