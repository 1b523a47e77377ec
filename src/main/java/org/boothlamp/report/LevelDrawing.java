package org.boothlamp.report;

/** Green, amber and red time as a small bar whose parts differ in height. */
final class LevelDrawing {

  private static final int WIDTH = 100;
  private static final int HEIGHT = 10;

  private LevelDrawing() {}

  /** The bar of judged time; nothing if nothing was judged. */
  static void bar(Markup page, Figures figures, String title) {
    if (!(figures.judgedSeconds() > 0)) {
      return;
    }
    page.open(
        "svg",
        "viewBox",
        "0 0 " + WIDTH + " " + HEIGHT,
        "preserveAspectRatio",
        "none",
        "role",
        "img",
        "class",
        "bar");
    page.leaf("title", title);
    double at = 0;
    at = part(page, LevelColour.GREEN, at, figures.greenSeconds() / figures.judgedSeconds());
    at = part(page, LevelColour.AMBER, at, figures.amberSeconds() / figures.judgedSeconds());
    part(page, LevelColour.RED, at, figures.redSeconds() / figures.judgedSeconds());
    page.close();
  }

  private static double part(Markup page, LevelColour colour, double at, double share) {
    if (share > 0) {
      rect(page, colour.style(), at, WIDTH * share, colour.tenths());
    }
    return at + WIDTH * share;
  }

  /** A sign of the legend: a piece of the level strip. */
  static void key(Markup page, String style, int tenths) {
    openKey(page);
    rect(page, style, 1, 18, tenths);
    page.close();
  }

  /** The sign of a fault. */
  static void faultKey(Markup page) {
    openKey(page);
    rect(page, "unjudged", 1, 18, HEIGHT);
    line(page, 1, 0, 19, HEIGHT);
    line(page, 1, HEIGHT, 19, 0);
    page.close();
  }

  /** The sign of an arc-out. */
  static void arcOutKey(Markup page) {
    openKey(page);
    page.empty("circle", "class", "hollow", "cx", "10", "cy", "5", "r", "4").close();
  }

  /** The sign of an excursion to the high side. */
  static void outsideKey(Markup page) {
    openKey(page);
    rect(page, LevelColour.OUTSIDE.style(), 1, 18, HEIGHT);
    page.empty("polygon", "class", LevelColour.OUTSIDE_MARK.style(), "points", "6,8 14,8 10,2");
    page.close();
  }

  private static void openKey(Markup page) {
    page.open("svg", "viewBox", "0 0 20 " + HEIGHT, "class", "key", "aria-hidden", "true");
  }

  private static void rect(Markup page, String style, double at, double width, int tenths) {
    page.empty(
        "rect",
        "class",
        style,
        "x",
        Numbers.fixed(at, 2),
        "y",
        Integer.toString(HEIGHT - tenths),
        "width",
        Numbers.fixed(width, 2),
        "height",
        Integer.toString(tenths));
  }

  private static void line(Markup page, int x1, int y1, int x2, int y2) {
    page.empty(
        "line",
        "class",
        "zero",
        "x1",
        Integer.toString(x1),
        "y1",
        Integer.toString(y1),
        "x2",
        Integer.toString(x2),
        "y2",
        Integer.toString(y2));
  }
}
