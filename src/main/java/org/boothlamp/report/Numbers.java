package org.boothlamp.report;

/**
 * Numbers for people, the same in every country: a full stop, no grouping. Written by hand because
 * a year's report formats hundreds of thousands of them and a format string would cost more than
 * the whole fold.
 */
public final class Numbers {

  /** A space at which no line ends: between a number and its unit. Printed as a space. */
  static final char GLUE = '\u00a0';

  static final String NOT_JUDGED = "not judged";

  private static final long[] POWERS = {1, 10, 100, 1_000};

  /** Above this a double no longer holds the decimals asked for. */
  private static final double LARGEST = 1e12;

  private Numbers() {}

  /**
   * A value with a fixed number of decimals, halves rounded away from zero; "?" if it is not known
   * (NaN).
   *
   * @param decimals 0 to 3
   */
  public static String fixed(double value, int decimals) {
    return append(new StringBuilder(12), value, decimals).toString();
  }

  /** Appends what {@link #fixed} gives. */
  static StringBuilder append(StringBuilder out, double value, int decimals) {
    if (Double.isNaN(value)) {
      return out.append('?');
    }
    if (Math.abs(value) > LARGEST) {
      return out.append(value);
    }
    long power = POWERS[decimals];
    long units = Math.round(Math.abs(value) * power);
    if (value < 0 && units > 0) {
      out.append('-');
    }
    out.append(units / power);
    if (decimals > 0) {
      out.append('.');
      appendPadded(out, units % power, decimals);
    }
    return out;
  }

  /** Appends a whole number of at least {@code digits} digits, zeros in front. */
  static StringBuilder appendPadded(StringBuilder out, long value, int digits) {
    for (long power = POWERS[digits - 1]; power > value && power > 1; power /= 10) {
      out.append('0');
    }
    return out.append(value);
  }

  /** A limit as it was written: up to three decimals, none that are zero. */
  public static String plain(double value) {
    StringBuilder out = append(new StringBuilder(12), value, 3);
    if (out.indexOf(".") >= 0 && out.indexOf("E") < 0) {
      int end = out.length();
      while (out.charAt(end - 1) == '0') {
        end--;
      }
      out.setLength(out.charAt(end - 1) == '.' ? end - 1 : end);
    }
    return out.toString();
  }

  /** A share (0 to 1) in per cent with one decimal, or "not judged" if there is none (NaN). */
  public static String share(double share) {
    return Double.isNaN(share) ? NOT_JUDGED : fixed(100 * share, 1) + GLUE + "%";
  }

  /** A count with its noun: "1 run", "12 runs", "2 touches". */
  static String counted(long count, String one, String many) {
    return "" + count + GLUE + (count == 1 ? one : many);
  }
}
