package org.boothlamp.report;

import java.util.ArrayList;
import java.util.List;
import java.util.function.DoubleUnaryOperator;
import org.boothlamp.calibration.MeasuredValue;

/**
 * The frame of a small drawing (SVG inside the page): axes, lines and marks in the drawing's own
 * units. Marks differ in shape, never in colour alone. Confined to one thread.
 */
final class Plot {

  /** What stands at a point. */
  enum Mark {
    UP,
    DOWN,
    CIRCLE,
    SQUARE,
    CROSS,
    RING
  }

  private static final int HEIGHT = 180;
  private static final int LEFT = 44;
  private static final int RIGHT = 8;
  private static final int TOP = 14;
  private static final int BOTTOM = 30;
  private static final int TICKS = 5;
  private static final int SAMPLES = 40;
  private static final double SIZE = 3.2;

  private final Markup page;
  private final int width;
  private final double xLow;
  private final double xHigh;
  private final double yHigh;

  /**
   * Opens a drawing, symmetric about zero upwards and downwards.
   *
   * @param width of the drawing in its own grains; its height is always the same
   * @param yHigh above 0
   */
  Plot(Markup page, String title, int width, double xLow, double xHigh, double yHigh) {
    this.page = page;
    this.width = width;
    this.xLow = xLow;
    this.xHigh = xHigh;
    this.yHigh = yHigh;
    page.open("svg", "viewBox", "0 0 " + width + " " + HEIGHT, "role", "img");
    page.leaf("title", title);
  }

  void close() {
    page.empty(
        "rect",
        "class",
        "frame",
        "x",
        number(LEFT),
        "y",
        number(TOP),
        "width",
        number(width - LEFT - RIGHT),
        "height",
        number(HEIGHT - TOP - BOTTOM));
    page.close();
  }

  /** Ticks upwards, with what they count. */
  void yAxis(String label) {
    double step = step(2 * yHigh);
    for (long i = (long) Math.ceil(-yHigh / step); i * step <= yHigh; i++) {
      double value = i * step;
      line(i == 0 ? "zero" : "grid", xLow, value, xHigh, value);
      words(LEFT - 4, py(value) + 3, "end", MeasuredValue.figure(value));
    }
    words(LEFT, TOP - 4, "start", label);
  }

  /** Ticks along, with what they count. */
  void xAxis(String label) {
    double step = step(xHigh - xLow);
    for (long i = (long) Math.ceil(xLow / step); i * step <= xHigh; i++) {
      line("grid", i * step, -yHigh, i * step, yHigh);
      xWords(i * step, MeasuredValue.figure(i * step), "middle");
    }
    words(width - RIGHT, HEIGHT - 5, "end", label);
  }

  /** Words below the frame, at a place. */
  void xWords(double x, String words, String anchor) {
    words(px(x), HEIGHT - BOTTOM + 11, anchor, words);
  }

  /** Words above the frame, at its right. */
  void note(String words) {
    words(width - RIGHT, TOP - 4, "end", words);
  }

  /** The area between minus and plus a function of x. */
  void band(DoubleUnaryOperator half) {
    List<String> corners = new ArrayList<>();
    for (int i = 0; i <= SAMPLES; i++) {
      corners.add(corner(sample(i), half.applyAsDouble(sample(i))));
    }
    for (int i = SAMPLES; i >= 0; i--) {
      corners.add(corner(sample(i), -half.applyAsDouble(sample(i))));
    }
    page.empty("polygon", "class", "band", "points", String.join(" ", corners));
  }

  /** A function of x, and the same below zero. */
  void bothWays(String style, DoubleUnaryOperator value) {
    List<double[]> above = new ArrayList<>();
    List<double[]> below = new ArrayList<>();
    for (int i = 0; i <= SAMPLES; i++) {
      above.add(new double[] {sample(i), value.applyAsDouble(sample(i))});
      below.add(new double[] {sample(i), -value.applyAsDouble(sample(i))});
    }
    path(style, above);
    path(style, below);
  }

  /** A line through points of x and y, cut at the frame. */
  void path(String style, List<double[]> points) {
    List<String> corners = points.stream().map(point -> corner(point[0], point[1])).toList();
    page.empty("polyline", "class", style, "points", String.join(" ", corners));
  }

  void line(String style, double x1, double y1, double x2, double y2) {
    page.empty(
        "line",
        "class",
        style,
        "x1",
        number(px(x1)),
        "y1",
        number(py(y1)),
        "x2",
        number(px(x2)),
        "y2",
        number(py(y2)));
  }

  boolean holds(double y) {
    return Math.abs(y) <= yHigh;
  }

  void mark(Mark mark, double x, double y) {
    double at = px(x);
    double up = py(y);
    switch (mark) {
      case UP -> polygon("full", at - SIZE, up + SIZE, at + SIZE, up + SIZE, at, up - SIZE);
      case DOWN -> polygon("hollow", at - SIZE, up - SIZE, at + SIZE, up - SIZE, at, up + SIZE);
      case SQUARE ->
          polygon(
              "full", at - 2.5, up - 2.5, at + 2.5, up - 2.5, at + 2.5, up + 2.5, at - 2.5,
              up + 2.5);
      case CIRCLE -> circle("hollow", at, up, SIZE);
      case RING -> circle("ring", at, up, 2 * SIZE);
      case CROSS -> cross(at, up);
    }
  }

  private void cross(double at, double up) {
    page.empty(
        "path",
        "class",
        "cross",
        "d",
        "M"
            + pair(at - SIZE, up - SIZE)
            + " L"
            + pair(at + SIZE, up + SIZE)
            + " M"
            + pair(at - SIZE, up + SIZE)
            + " L"
            + pair(at + SIZE, up - SIZE));
  }

  private void polygon(String style, double... corners) {
    List<String> pairs = new ArrayList<>();
    for (int i = 0; i < corners.length; i += 2) {
      pairs.add(pair(corners[i], corners[i + 1]));
    }
    page.empty("polygon", "class", style, "points", String.join(" ", pairs));
  }

  private void circle(String style, double at, double up, double radius) {
    page.empty("circle", "class", style, "cx", number(at), "cy", number(up), "r", number(radius));
  }

  private void words(double at, double up, String anchor, String words) {
    page.leaf("text", words, "x", number(at), "y", number(up), "text-anchor", anchor);
  }

  private double sample(int index) {
    return xLow + (xHigh - xLow) * index / SAMPLES;
  }

  private double px(double x) {
    return LEFT + (x - xLow) / (xHigh - xLow) * (width - LEFT - RIGHT);
  }

  private double py(double y) {
    double held = Math.max(-yHigh, Math.min(yHigh, y));
    return TOP + (yHigh - held) / (2 * yHigh) * (HEIGHT - TOP - BOTTOM);
  }

  private String corner(double x, double y) {
    return pair(px(x), py(y));
  }

  private static String pair(double x, double y) {
    return number(x) + "," + number(y);
  }

  private static String number(double value) {
    return Numbers.fixed(value, 1);
  }

  /** 1, 2 or 5 times a power of ten, so that about as many fit as ticks are wanted. */
  static double step(double range) {
    double rough = range / TICKS;
    double power = Math.pow(10, Math.floor(Math.log10(rough)));
    for (double factor : new double[] {1, 2, 5}) {
      if (factor * power >= rough) {
        return factor * power;
      }
    }
    return 10 * power;
  }
}
