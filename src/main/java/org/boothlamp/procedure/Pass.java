package org.boothlamp.procedure;

import java.util.List;

/**
 * One row of limits in a procedure. Immutable.
 *
 * @param name root, fill, cap, tack …; unique in its procedure
 * @param windows at most one for each quantity, at least one that is live
 * @param wireMm wire diameter, mm; NaN if not given
 * @param wireFeedMmPerS wire feed speed, mm/s; NaN if not given
 * @param whip true if the rod is to be whipped or weaved, so that a beat is no mistake
 */
public record Pass(
    String name, List<Window> windows, double wireMm, double wireFeedMmPerS, boolean whip) {

  public Pass {
    windows = List.copyOf(windows);
  }

  /** A pass that is welded without whipping. */
  public Pass(String name, List<Window> windows, double wireMm, double wireFeedMmPerS) {
    this(name, windows, wireMm, wireFeedMmPerS, false);
  }

  /** The window of a quantity, or null if it is not limited. */
  public Window window(Quantity quantity) {
    for (Window window : windows) {
      if (window.quantity() == quantity) {
        return window;
      }
    }
    return null;
  }
}
