package org.boothlamp.report;

import java.util.List;
import org.boothlamp.procedure.Quantity;
import org.boothlamp.procedure.Window;

/** The report's records in words. */
final class Words {

  /** What stands in the place of a trainee code when there is none. */
  static final String NOBODY = "nobody signed in";

  /** What stands in the place of a procedure when there is none. */
  static final String NO_PROCEDURE = "no procedure";

  private Words() {}

  static String trainee(String code) {
    return code.isEmpty() ? NOBODY : code;
  }

  /** "S-3F-18 r2 fill (amps 95 to 125 A, volts 20 to 26 V)". */
  static String pass(PassKey key) {
    if (key.isNone()) {
      return NO_PROCEDURE;
    }
    StringBuilder out = new StringBuilder(key.procedureId());
    appendUnlessEmpty(out, " r", key.revision());
    appendUnlessEmpty(out, " ", key.pass());
    if (!key.windows().isEmpty()) {
      out.append(" (").append(windows(key.windows())).append(')');
    }
    return out.toString();
  }

  private static void appendUnlessEmpty(StringBuilder out, String before, String text) {
    if (!text.isEmpty()) {
      out.append(before).append(text);
    }
  }

  private static String windows(List<Window> windows) {
    return String.join(", ", windows.stream().map(Words::window).toList());
  }

  private static String window(Window window) {
    return quantity(window.quantity())
        + " "
        + Numbers.plain(window.low())
        + " to "
        + Numbers.plain(window.high())
        + Numbers.GLUE
        + window.quantity().unit();
  }

  static String quantity(Quantity quantity) {
    return switch (quantity) {
      case AMPS -> "amps";
      case VOLTS -> "volts";
      case POWER_W -> "power";
      case SHORTS_PER_S -> "short circuits";
      case HEAT_INPUT_KJ_PER_MM -> "heat input";
      case ARC_S -> "run length";
    };
  }

  /** Adds "volts high 2x 3.4 s (worst 28.9 V)", one for each quantity and side. */
  static void addExcursions(List<String> words, List<ExcursionTally> tallies) {
    for (ExcursionTally tally : tallies) {
      words.add(excursion(tally));
    }
  }

  private static String excursion(ExcursionTally tally) {
    StringBuilder out = new StringBuilder(48);
    out.append(quantity(tally.quantity())).append(' ').append(tally.side().word());
    out.append(' ').append(tally.count()).append('x').append(Numbers.GLUE);
    Durations.append(out, tally.seconds());
    out.append(" (worst ");
    return out.append(value(tally.quantity(), tally.worst())).append(')').toString();
  }

  /** A value of a quantity with its unit: "28.9 V". */
  static String value(Quantity quantity, double value) {
    return Numbers.fixed(value, decimals(quantity)) + Numbers.GLUE + quantity.unit();
  }

  private static int decimals(Quantity quantity) {
    return switch (quantity) {
      case POWER_W -> 0;
      case HEAT_INPUT_KJ_PER_MM -> 2;
      default -> 1;
    };
  }

  /** "high", "low" or nothing: where a value lies against its window, if it has one. */
  static String side(double value, Window window) {
    if (window == null || Double.isNaN(value)) {
      return "";
    }
    return value > window.high() ? "high" : value < window.low() ? "low" : "";
  }
}
