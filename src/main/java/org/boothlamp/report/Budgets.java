package org.boothlamp.report;

import org.boothlamp.calibration.Distribution;

/** How budgets are written. */
final class Budgets {

  private Budgets() {}

  static String distribution(Distribution distribution) {
    return switch (distribution) {
      case NORMAL -> "normal";
      case RECTANGULAR -> "rectangular";
      case TRIANGULAR -> "triangular";
      case ARCSINE -> "arcsine";
    };
  }

  /** Degrees of freedom, cut down to whole ones; a sign where there is no end. */
  static String freedom(double freedom) {
    return freedom > 1e6 ? "∞" : Long.toString((long) Math.floor(freedom));
  }
}
