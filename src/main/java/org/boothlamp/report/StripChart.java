package org.boothlamp.report;

import java.util.List;
import org.boothlamp.judging.Side;
import org.boothlamp.judging.Signal;
import org.boothlamp.procedure.Quantity;

/**
 * A run as a small drawing (SVG inside the page): amps above volts, each over its window, and what
 * the lamp showed along the time axis. Levels differ in height, excursions in the direction of
 * their mark, never in colour alone. Confined to one thread.
 */
final class StripChart {

  private static final double WIDTH = 360;
  private static final double HEIGHT = 200;
  private static final double LEFT = 34;
  private static final double RIGHT = 354;
  private static final double AMPS_TOP = 14;
  private static final double VOLTS_TOP = 90;
  private static final double PANEL = 64;
  private static final double BETWEEN = (AMPS_TOP + PANEL + VOLTS_TOP) / 2;
  private static final double LEVEL_BOTTOM = 182;
  private static final double LEVEL_HEIGHT = 20;
  private static final double MARK = 4;

  /** A point of this length says all of an average over a second. */
  private static final double FINE_POINT_SECONDS = 0.26;

  private static final int CORNERS_LENGTH = 4_096;
  private static final double LAST_LABEL = 12;

  private final Markup page;
  private final RunSummary summary;
  private final RunStrip strip;
  private final double seconds;

  private StripChart(Markup page, RunSummary summary, RunStrip strip) {
    this.page = page;
    this.summary = summary;
    this.strip = strip;
    this.seconds = Math.max(strip.seconds(), summary.run().lengthSeconds());
  }

  /**
   * Draws a run.
   *
   * @param title what it shows, for those who cannot see it
   * @param strip at least one point
   */
  static void draw(Markup page, RunSummary summary, RunStrip strip, String title) {
    new StripChart(page, summary, strip).draw(title);
  }

  private void draw(String title) {
    page.open("svg", "viewBox", box(), "role", "img", "class", "strip").leaf("title", title);
    panel(Quantity.AMPS, strip.amps(), AMPS_TOP);
    panel(Quantity.VOLTS, strip.volts(), VOLTS_TOP);
    arcOuts();
    strip.signals().forEach(this::level);
    line("zero", LEFT, LEVEL_BOTTOM, RIGHT, LEVEL_BOTTOM);
    timeAxis();
    page.close();
  }

  private static String box() {
    return "0 0 " + number(WIDTH) + " " + number(HEIGHT);
  }

  private void panel(Quantity quantity, RunStrip.Means means, double top) {
    StripScale scale = StripScale.of(means, summary.run().window(quantity), strip.pointSeconds());
    if (scale.window() != null) {
      double high = y(scale, top, scale.window().high());
      rect("band", LEFT, high, RIGHT, y(scale, top, scale.window().low()));
    }
    for (ExcursionRecord excursion : summary.run().excursions()) {
      if (excursion.quantity() == quantity) {
        excursion(excursion, top);
      }
    }
    grid(scale, top);
    range(means, scale, top);
    means(means, scale, top);
    rect("frame", LEFT, top, RIGHT, top + PANEL);
    words(LEFT, top - 4, "start", quantity.unit());
  }

  private void excursion(ExcursionRecord one, double top) {
    double from = x(one.startSeconds());
    double until = x(one.startSeconds() + one.lengthSeconds());
    rect(LevelColour.OUTSIDE.style(), from, top, until, top + PANEL);
    double at = (from + until) / 2;
    boolean high = one.side() == Side.HIGH;
    double base = high ? top + 2 + 1.6 * MARK : top + PANEL - 2 - 1.6 * MARK;
    double tip = high ? top + 2 : top + PANEL - 2;
    page.empty(
        "polygon",
        "class",
        LevelColour.OUTSIDE_MARK.style(),
        "points",
        pair(at - MARK, base) + " " + pair(at + MARK, base) + " " + pair(at, tip));
  }

  private void grid(StripScale scale, double top) {
    for (double value : scale.ticks()) {
      double at = y(scale, top, value);
      line(scale.window() == null ? "grid" : "limit", LEFT, at, RIGHT, at);
      words(LEFT - 3, at + 3, "end", Numbers.plain(value));
    }
  }

  /** Lowest and highest mean of 0.05 s, where points are long. */
  private void range(RunStrip.Means means, StripScale scale, double top) {
    if (strip.pointSeconds() <= FINE_POINT_SECONDS) {
      return;
    }
    for (int from = nextKnown(means, 0); from < means.size(); ) {
      int until = nextUnknown(means, from);
      StringBuilder corners = new StringBuilder(CORNERS_LENGTH);
      for (int i = from; i < until; i++) {
        appendCorner(corners, i, y(scale, top, means.high()[i]));
      }
      for (int i = until - 1; i >= from; i--) {
        appendCorner(corners, i, y(scale, top, means.low()[i]));
      }
      page.empty("polygon", "class", "range", "points", corners.toString());
      from = nextKnown(means, until);
    }
  }

  private void means(RunStrip.Means means, StripScale scale, double top) {
    for (int from = nextKnown(means, 0); from < means.size(); ) {
      int until = nextUnknown(means, from);
      StringBuilder corners = new StringBuilder(CORNERS_LENGTH);
      for (int i = from; i < until; i++) {
        appendCorner(corners, i, y(scale, top, means.mean()[i]));
      }
      String style = LevelColour.TRACE.style();
      page.empty("polyline", "class", style, "points", corners.toString());
      from = nextKnown(means, until);
    }
  }

  private static int nextKnown(RunStrip.Means means, int from) {
    int at = from;
    while (at < means.size() && Double.isNaN(means.mean()[at])) {
      at++;
    }
    return at;
  }

  private static int nextUnknown(RunStrip.Means means, int from) {
    int at = from;
    while (at < means.size() && !Double.isNaN(means.mean()[at])) {
      at++;
    }
    return at;
  }

  private void arcOuts() {
    List<Double> moments = strip.arcOutSeconds();
    int shown = Math.min(moments.size(), summary.run().arcOuts());
    for (double moment : moments.subList(0, shown)) {
      page.empty(
          "circle",
          "class",
          "hollow",
          "cx",
          number(x(moment)),
          "cy",
          number(BETWEEN),
          "r",
          number(MARK));
    }
  }

  private void level(RunStrip.Shown shown) {
    double from = x(shown.fromSeconds());
    double until = x(shown.untilSeconds());
    LevelColour colour = colour(shown.signal());
    if (colour != null) {
      double top = LEVEL_BOTTOM - LEVEL_HEIGHT * colour.tenths() / 10;
      rect(colour.style(), from, top, until, LEVEL_BOTTOM);
    } else if (shown.signal() == Signal.SETTLING) {
      rect("unjudged", from, LEVEL_BOTTOM - LEVEL_HEIGHT * 0.3, until, LEVEL_BOTTOM);
    } else if (shown.signal() == Signal.FAULT) {
      double top = LEVEL_BOTTOM - LEVEL_HEIGHT;
      rect("unjudged", from, top, until, LEVEL_BOTTOM);
      line("zero", from, top, until, LEVEL_BOTTOM);
      line("zero", from, LEVEL_BOTTOM, until, top);
    }
  }

  private static LevelColour colour(Signal signal) {
    return switch (signal) {
      case GREEN -> LevelColour.GREEN;
      case AMBER -> LevelColour.AMBER;
      case RED -> LevelColour.RED;
      default -> null;
    };
  }

  private void timeAxis() {
    double step = Plot.step(seconds);
    long last = (long) Math.floor(seconds / step);
    for (long i = 0; i <= last; i++) {
      double at = x(i * step);
      line("zero", at, LEVEL_BOTTOM, at, LEVEL_BOTTOM + 3);
      String anchor = i == 0 ? "start" : at > RIGHT - LAST_LABEL ? "end" : "middle";
      words(at, HEIGHT - 4, anchor, Numbers.plain(i * step) + (i == last ? " s" : ""));
    }
  }

  private double x(double atSeconds) {
    double share = Math.max(0, Math.min(1, atSeconds / seconds));
    return LEFT + share * (RIGHT - LEFT);
  }

  private static double y(StripScale scale, double top, double value) {
    return top + PANEL * (1 - scale.share(value));
  }

  private void appendCorner(StringBuilder corners, int point, double y) {
    Numbers.append(corners, x((point + 0.5) * strip.pointSeconds()), 1).append(',');
    Numbers.append(corners, y, 1).append(' ');
  }

  private void rect(String style, double left, double top, double right, double bottom) {
    page.empty(
        "rect",
        "class",
        style,
        "x",
        number(left),
        "y",
        number(top),
        "width",
        number(Math.max(0.5, right - left)),
        "height",
        number(bottom - top));
  }

  private void line(String style, double x1, double y1, double x2, double y2) {
    page.empty(
        "line",
        "class",
        style,
        "x1",
        number(x1),
        "y1",
        number(y1),
        "x2",
        number(x2),
        "y2",
        number(y2));
  }

  private void words(double at, double up, String anchor, String words) {
    page.leaf("text", words, "x", number(at), "y", number(up), "text-anchor", anchor);
  }

  private static String pair(double x, double y) {
    return number(x) + "," + number(y);
  }

  private static String number(double value) {
    return Numbers.fixed(value, 1);
  }
}
