package org.boothlamp.acquisition;

import java.util.Locale;
import java.util.regex.Pattern;

/**
 * A number as a meter answers it: NR1, NR2 or NR3 of IEEE 488.2 (whole, with a point, with an
 * exponent), and what SCPI-1999 lets stand for no number: 9.9E37 for infinity, which is an
 * overload, and 9.91E37 for not-a-number.
 */
final class ScpiNumber {

  private static final Pattern NUMBER =
      Pattern.compile("[+-]?(\\d+(\\.\\d*)?|\\.\\d+)([eE][+-]?\\d{1,3})?");

  private static final double INFINITY = 9.9e37;
  private static final double NOT_A_NUMBER = 9.91e37;

  private ScpiNumber() {}

  /** True if this is one number and nothing else. */
  static boolean isNumber(String answer) {
    return answer.length() < 64 && NUMBER.matcher(answer).matches();
  }

  /** The number; only for what {@link #isNumber}. */
  static double parse(String answer) {
    return Double.parseDouble(answer);
  }

  static boolean isOverload(double value) {
    return Math.abs(value) >= INFINITY && !isNotANumber(value);
  }

  /** Meters round it to their own digits. */
  static boolean isNotANumber(double value) {
    return Math.abs(value - NOT_A_NUMBER) < 1e-6 * NOT_A_NUMBER;
  }

  /** An answer for people: quoted, what cannot be printed as \\x and two digits, cut at 60. */
  static String shown(String answer) {
    StringBuilder text = new StringBuilder("\"");
    for (char c : answer.substring(0, Math.min(60, answer.length())).toCharArray()) {
      if (c < ' ' || c > '~' || c == '"' || c == '\\') {
        text.append(String.format(Locale.ROOT, "\\x%02X", (int) c));
      } else {
        text.append(c);
      }
    }
    return text.append(answer.length() > 60 ? "…\"" : "\"").toString();
  }
}
