package org.boothlamp.cli;

import java.util.Locale;
import java.util.stream.Collectors;
import org.boothlamp.procedure.Pass;
import org.boothlamp.procedure.Quantity;
import org.boothlamp.procedure.Window;

/** How commands say things that several of them say. */
final class Wording {

  private Wording() {}

  /** The windows of a pass: {@code 95 to 125 A, 20 to 26 V}. */
  static String windows(Pass pass) {
    return pass.windows().stream().map(Wording::window).collect(Collectors.joining(", "));
  }

  /** One window: {@code 95 to 125 A}. */
  static String window(Window window) {
    return number(window.low())
        + " to "
        + number(window.high())
        + " "
        + window.quantity().unit()
        + (window.quantity() == Quantity.SHORTS_PER_S ? " short circuits" : "");
  }

  /** A number without needless zeros. */
  static String number(double value) {
    String text = String.format(Locale.ROOT, "%.4f", value);
    return text.replaceFirst("\\.?0+$", "");
  }
}
