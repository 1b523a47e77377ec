package org.boothlamp.hardwarenotes;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A number as it is printed, with its unit. Immutable.
 *
 * @param number the digits as printed
 * @param unit the unit as printed; empty if none
 */
record Printed(BigDecimal number, String unit) {

  private static final Pattern FORM =
      Pattern.compile("(-?[0-9][0-9,]*(?:\\.[0-9]+)?)(?: ?(\\S+))?");

  /** Size of one of each unit that the notes use, in units without prefix. */
  private static final Map<String, Double> UNITS =
      Map.ofEntries(
          Map.entry("", 1.0),
          Map.entry("Ω", 1.0),
          Map.entry("kΩ", 1e3),
          Map.entry("MΩ", 1e6),
          Map.entry("nF", 1e-9),
          Map.entry("µF", 1e-6),
          Map.entry("mV", 1e-3),
          Map.entry("V", 1.0),
          Map.entry("kV", 1e3),
          Map.entry("µA", 1e-6),
          Map.entry("mA", 1e-3),
          Map.entry("A", 1.0),
          Map.entry("mV/A", 1e-3),
          Map.entry("mW", 1e-3),
          Map.entry("W", 1.0),
          Map.entry("Hz", 1.0),
          Map.entry("kHz", 1e3),
          Map.entry("µs", 1e-6),
          Map.entry("ms", 1e-3),
          Map.entry("s", 1.0),
          Map.entry("mm", 1e-3),
          Map.entry("K", 1.0),
          Map.entry("ppm/K", 1e-6),
          Map.entry("%", 1e-2),
          Map.entry("dB", 1.0),
          Map.entry("bits", 1.0));

  static Printed of(String text) {
    Matcher matcher = FORM.matcher(text);
    if (!matcher.matches()) {
      throw new IllegalArgumentException("a number with a unit is expected: \"" + text + "\"");
    }
    String unit = matcher.group(2) == null ? "" : matcher.group(2);
    if (!UNITS.containsKey(unit)) {
      throw new IllegalArgumentException("no such unit is known: \"" + text + "\"");
    }
    return new Printed(new BigDecimal(matcher.group(1).replace(",", "")), unit);
  }

  /** In units without prefix; a percentage as a fraction. */
  double value() {
    return number.doubleValue() * UNITS.get(unit);
  }

  /** True if {@code exact}, without prefix, rounds to these very digits. */
  boolean isRounded(double exact) {
    return rounded(exact).compareTo(number) == 0;
  }

  /** {@code exact} with as many digits behind the point as are printed, in the printed unit. */
  BigDecimal rounded(double exact) {
    return BigDecimal.valueOf(exact / UNITS.get(unit))
        .setScale(number.scale(), RoundingMode.HALF_UP);
  }
}
