package org.boothlamp.report;

/** Lengths of time for people. */
public final class Durations {

  private static final int SECONDS_PER_HOUR = 3_600;

  private Durations() {}

  /**
   * A length with its unit, in the form that reads best: "3.4 s", "8:41 min", "1:02:03 h"; "?" if
   * it is not known (NaN). Each form starts where the one before would round up to it.
   */
  public static String words(double seconds) {
    return append(new StringBuilder(12), seconds).toString();
  }

  /** Appends what {@link #words} gives. */
  static StringBuilder append(StringBuilder out, double seconds) {
    if (Double.isNaN(seconds) || Math.round(seconds * 10) < 600) {
      return Numbers.append(out, seconds, 1).append(Numbers.GLUE).append('s');
    }
    long whole = Math.round(seconds);
    if (whole < SECONDS_PER_HOUR) {
      out.append(whole / 60).append(':');
      return Numbers.appendPadded(out, whole % 60, 2).append(Numbers.GLUE).append("min");
    }
    out.append(whole / SECONDS_PER_HOUR).append(':');
    Numbers.appendPadded(out, whole / 60 % 60, 2).append(':');
    return Numbers.appendPadded(out, whole % 60, 2).append(Numbers.GLUE).append('h');
  }
}
