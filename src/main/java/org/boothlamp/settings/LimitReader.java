package org.boothlamp.settings;

import java.util.EnumMap;
import java.util.Map;
import org.boothlamp.procedure.Quantity;
import org.boothlamp.procedure.Window;
import org.tomlj.TomlArray;
import org.tomlj.TomlTable;

/**
 * Reads one limit of a pass: {@code [low, high]} or {@code { nominal, tolerance_percent }}.
 *
 * <p>The ranges here only catch a slip of the finger, such as one zero too many; they are far wider
 * than any hand-held arc (common practice, no source).
 */
final class LimitReader {

  private static final Map<Quantity, Range> PLAUSIBLE = new EnumMap<>(Quantity.class);
  private static final Range TOLERANCE_PERCENT = new Range(0.1, 100, "%");
  private static final double TOLERANCE_EXAMPLE_PERCENT = 10;

  static {
    plausible(Quantity.AMPS, 2_000);
    plausible(Quantity.VOLTS, 150);
    plausible(Quantity.POWER_W, 100_000);
    plausible(Quantity.SHORTS_PER_S, 1_000);
    plausible(Quantity.HEAT_INPUT_KJ_PER_MM, 20);
    plausible(Quantity.ARC_S, 3_600);
  }

  private final Section pass;
  private final Quantity quantity;
  private final String key;
  private final Range range;

  private LimitReader(Section pass, Quantity quantity) {
    this.pass = pass;
    this.quantity = quantity;
    key = quantity.key();
    range = PLAUSIBLE.get(quantity);
  }

  private static void plausible(Quantity quantity, double high) {
    PLAUSIBLE.put(quantity, new Range(0, high, quantity.unit()));
  }

  /** The window of a quantity; null if the pass has none or a problem was noted with it. */
  static Window read(Section pass, Quantity quantity) {
    return new LimitReader(pass, quantity).read();
  }

  private Window read() {
    Object value = pass.value(key);
    if (value instanceof TomlArray limits) {
      return fromLimits(limits);
    }
    if (value instanceof TomlTable) {
      return fromTolerance(pass.section(key));
    }
    if (value != null) {
      refuseShape(value);
    }
    return null;
  }

  private void refuseShape(Object value) {
    pass.refuse(
        key,
        "must be two numbers, [low, high], " + range.words() + ", but is " + Literal.of(value),
        "write " + key + " = [low, high] or " + key + " = { nominal = x, tolerance_percent = 10 }");
  }

  private Window fromLimits(TomlArray limits) {
    if (limits.size() == 2
        && limits.get(0) instanceof Number low
        && limits.get(1) instanceof Number high
        && range.holds(low.doubleValue())
        && range.holds(high.doubleValue())) {
      return window(low.doubleValue(), high.doubleValue());
    }
    refuseShape(limits);
    return null;
  }

  private Window window(double low, double high) {
    if (low < high) {
      return new Window(quantity, low, high);
    }
    String numbers = "low is " + Literal.ofNumber(low) + " and high is " + Literal.ofNumber(high);
    String swapped = "[" + Literal.ofNumber(high) + ", " + Literal.ofNumber(low) + "]";
    pass.refuse(
        key,
        "low must be below high, but " + numbers + " " + quantity.unit(),
        low > high ? "write " + key + " = " + swapped : "leave room between the two");
    return null;
  }

  private Window fromTolerance(Section limit) {
    double nominal = limit.requiredNumber("nominal", range, range.high() / 10);
    double percent =
        limit.requiredNumber("tolerance_percent", TOLERANCE_PERCENT, TOLERANCE_EXAMPLE_PERCENT);
    if (!limit.isSound("nominal") || !limit.isSound("tolerance_percent")) {
      return null;
    }
    if (nominal == 0) {
      limit.refuse("nominal", "must be above 0, but is 0", "write the middle of the limits");
      return null;
    }
    return new Window(quantity, nominal * (100 - percent) / 100, nominal * (100 + percent) / 100);
  }
}
