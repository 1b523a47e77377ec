package org.boothlamp.report;

import org.boothlamp.words.Units;

/** What a length goes into, with its unit, in the units that people asked for. */
public final class UnitText {

  private UnitText() {}

  /** "148 mm", "5.83 in"; millimetres as they were entered, inches to a hundredth. */
  public static String length(double millimetres, Units units) {
    double length = units.length(millimetres);
    return number(units == Units.METRIC ? Numbers.plain(length) : Numbers.fixed(length, 2))
        + units.lengthUnit();
  }

  /** "178 mm/min", "7.0 in/min". */
  public static String speed(double millimetresPerSecond, Units units) {
    return number(Numbers.fixed(units.speed(millimetresPerSecond), units == Units.METRIC ? 0 : 1))
        + units.speedUnit();
  }

  /** "0.91 kJ/mm", "23.1 kJ/in": heat input, or arc energy over length. */
  public static String heatInput(double kilojoulesPerMillimetre, Units units) {
    return number(heatInputNumber(kilojoulesPerMillimetre, units)) + units.heatInputUnit();
  }

  /** "0.91": the same without its unit. */
  static String heatInputNumber(double kilojoulesPerMillimetre, Units units) {
    double value = units.heatInput(kilojoulesPerMillimetre);
    return Numbers.fixed(value, units == Units.METRIC ? 2 : 1);
  }

  private static String number(String digits) {
    return digits + Numbers.GLUE;
  }
}
