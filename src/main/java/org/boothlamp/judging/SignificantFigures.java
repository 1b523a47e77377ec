package org.boothlamp.judging;

import java.math.BigDecimal;
import java.math.MathContext;

/** Writes numbers to a few significant figures, without needless zeros: 22, 0.875, 1200. */
public final class SignificantFigures {

  private SignificantFigures() {}

  /** A finite number, rounded half up to {@code figures} significant figures. */
  public static String of(double value, int figures) {
    BigDecimal rounded = new BigDecimal(value).round(new MathContext(figures));
    return rounded.signum() == 0 ? "0" : rounded.stripTrailingZeros().toPlainString();
  }
}
