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
            "pass \"%s\": window %s %.6g to %.6g %s is %.6g wide, but the sensor is uncertain by"
                + " U = %.3g at either limit and 2 U must be below the width",
            pass.name(),
            window.quantity().key(),
            window.low(),
            window.high(),
            window.quantity().unit(),
            window.width(),
            expandedUncertainty));
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
