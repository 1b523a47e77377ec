package org.boothlamp.calibration;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;

/**
 * Numbers of a calibration for people, the same in every country: a full stop, no grouping, no
 * exponent. An uncertainty has two significant digits and its value as many decimals (JCGM 100:2008
 * 7.2.6); "?" stands for what is not a number.
 */
public final class MeasuredValue {

  private static final MathContext UNCERTAINTY = new MathContext(2, RoundingMode.HALF_UP);
  private static final MathContext FIGURE = new MathContext(4, RoundingMode.HALF_UP);

  private MeasuredValue() {}

  /** An uncertainty with two significant digits: "1.2", "0.10", "120". */
  public static String uncertainty(double uncertainty) {
    return Double.isFinite(uncertainty) ? rounded(uncertainty).toPlainString() : "?";
  }

  /** A value with the decimals its uncertainty deserves; as it is if there is no uncertainty. */
  public static String value(double value, double uncertainty) {
    if (!Double.isFinite(value)) {
      return "?";
    }
    BigDecimal exact = BigDecimal.valueOf(value);
    if (!Double.isFinite(uncertainty) || uncertainty == 0) {
      return plain(exact);
    }
    BigDecimal shown = exact.setScale(rounded(uncertainty).scale(), RoundingMode.HALF_UP);
    return shown.toPlainString();
  }

  /** "104.3 A ± 1.2 A (k = 2.05)". */
  public static String statement(double value, double expanded, double factor, String unit) {
    return value(value, expanded)
        + " "
        + unit
        + " ± "
        + uncertainty(expanded)
        + " "
        + unit
        + " (k = "
        + new BigDecimal(factor).setScale(2, RoundingMode.HALF_UP)
        + ")";
  }

  /** Any figure with up to four significant digits. */
  public static String figure(double value) {
    return Double.isFinite(value) ? plain(BigDecimal.valueOf(value).round(FIGURE)) : "?";
  }

  private static BigDecimal rounded(double uncertainty) {
    if (uncertainty == 0) {
      return BigDecimal.ZERO;
    }
    BigDecimal rounded = BigDecimal.valueOf(uncertainty).round(UNCERTAINTY);
    // 0.5 has one digit and becomes 0.50
    return rounded.setScale(rounded.scale() + UNCERTAINTY.getPrecision() - rounded.precision());
  }

  /** BigDecimal keeps the zeros of "0.10" and this drops them; 0 itself needs saying. */
  private static String plain(BigDecimal value) {
    return value.signum() == 0 ? "0" : value.stripTrailingZeros().toPlainString();
  }
}
