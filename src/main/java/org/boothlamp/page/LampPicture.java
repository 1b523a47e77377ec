package org.boothlamp.page;

import org.boothlamp.report.Markup;

/**
 * The lamp as a drawing. Each light has a place, a shape and a sign of its own, so that nobody
 * needs its colour: red an octagon with a cross, amber a triangle with an exclamation mark, green a
 * circle with a tick.
 */
final class LampPicture {

  private static final String OCTAGON = "46,14 74,14 94,34 94,62 74,82 46,82 26,62 26,34";
  private static final String TRIANGLE = "60,104 100,176 20,176";

  private LampPicture() {}

  /** Draws it; the style sheet lights it by the attribute data-signal of what it stands in. */
  static void append(Markup page) {
    page.open("svg", "class", "lamp", "viewBox", "0 0 120 286", "aria-hidden", "true");
    page.empty(
        "rect", "class", "housing", "x", "4", "y", "2", "width", "112", "height", "282", "rx",
        "14");
    page.open("g", "class", "light red").empty("polygon", "points", OCTAGON);
    page.empty("path", "class", "sign", "d", "M46 34 L74 62 M74 34 L46 62").close();
    page.open("g", "class", "light amber").empty("polygon", "points", TRIANGLE);
    page.empty("path", "class", "sign", "d", "M60 126 L60 151 M60 161 L60 167").close();
    page.open("g", "class", "light green");
    page.empty("circle", "cx", "60", "cy", "232", "r", "36");
    page.empty("path", "class", "sign", "d", "M43 232 L55 245 L78 219").close();
    page.close();
  }
}
