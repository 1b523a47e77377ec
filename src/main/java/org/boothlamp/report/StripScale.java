package org.boothlamp.report;

import org.boothlamp.procedure.Window;

/**
 * From where to where a panel of a strip chart reaches: the window with half its width around it,
 * and farther, up to its width and a fifth, for what the run needs; without a window as far as the
 * run goes. Immutable.
 *
 * @param low value at the bottom
 * @param high value at the top
 * @param window may be null
 */
record StripScale(double low, double high, Window window) {

  private static final double LEAST_MARGIN = 0.5;
  private static final double MOST_MARGIN = 1.2;

  /** Room for what is farthest out, so that it does not lie on the frame. */
  private static final double HEADROOM = 1.1;

  /** What the start of an arc does is not looked at, s. */
  private static final double START_SECONDS = 1;

  static StripScale of(RunStrip.Means means, Window window, double pointSeconds) {
    double lowest = Double.POSITIVE_INFINITY;
    double highest = Double.NEGATIVE_INFINITY;
    int start = (int) Math.round(START_SECONDS / pointSeconds);
    for (int i = start < means.size() ? start : 0; i < means.size(); i++) {
      if (!Double.isNaN(means.mean()[i])) {
        lowest = Math.min(lowest, means.low()[i]);
        highest = Math.max(highest, means.high()[i]);
      }
    }
    return window == null ? around(lowest, highest) : around(lowest, highest, window);
  }

  private static StripScale around(double lowest, double highest) {
    if (lowest > highest) {
      return new StripScale(0, 1, null);
    }
    double margin = Math.max(1, 0.1 * (highest - lowest));
    return new StripScale(Math.max(0, lowest - margin), highest + margin, null);
  }

  private static StripScale around(double lowest, double highest, Window window) {
    double least = LEAST_MARGIN * window.width();
    double most = MOST_MARGIN * window.width();
    double below = HEADROOM * (window.low() - lowest);
    double above = HEADROOM * (highest - window.high());
    double low = window.low() - Math.min(most, Math.max(least, below));
    double high = window.high() + Math.min(most, Math.max(least, above));
    return new StripScale(Math.max(0, low), high, window);
  }

  /** Where a value lies, 0 at the bottom to 1 at the top; what is beyond stays at the edge. */
  double share(double value) {
    return Math.max(0, Math.min(1, (value - low) / (high - low)));
  }

  /** The values that are written beside the panel. */
  double[] ticks() {
    if (window != null) {
      return new double[] {window.low(), window.high()};
    }
    double step = Plot.step((high - low) * 2);
    double first = Math.ceil(low / step) * step;
    return new double[] {first, first + step};
  }
}
