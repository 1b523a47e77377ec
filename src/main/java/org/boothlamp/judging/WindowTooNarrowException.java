package org.boothlamp.judging;

import java.util.Locale;
import org.boothlamp.procedure.Pass;
import org.boothlamp.procedure.Window;

/** A window in which the sensor's uncertainty leaves no room for green. */
public final class WindowTooNarrowException extends IllegalArgumentException {

  private static final long serialVersionUID = 1L;

  private final transient Window window;
  private final double expandedUncertainty;

  WindowTooNarrowException(Pass pass, Window window, double expandedUncertainty) {
    super(
        String.format(
            Locale.ROOT,
            "pass \"%s\": window %s %s to %s %s is %s wide, but the sensor is uncertain by"
                + " U = %s at either limit and 2 U must be below the width",
            pass.name(),
            window.quantity().key(),
            SignificantFigures.of(window.low(), 6),
            SignificantFigures.of(window.high(), 6),
            window.quantity().unit(),
            SignificantFigures.of(window.width(), 6),
            SignificantFigures.of(expandedUncertainty, 3)));
    this.window = window;
    this.expandedUncertainty = expandedUncertainty;
  }

  /** The window that was refused. */
  public Window window() {
    return window;
  }

  /** U at the limits of the refused window, in its unit. */
  public double expandedUncertainty() {
    return expandedUncertainty;
  }
}
