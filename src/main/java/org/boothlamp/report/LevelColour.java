package org.boothlamp.report;

/**
 * The colours of a shift's drawings, what each stands on, and how many tenths of a bar's height a
 * level fills, so that levels can be told apart without colour.
 */
enum LevelColour {
  GREEN("lv-green", "#1b7a43", "#ffffff", 3),
  AMBER("lv-amber", "#a85a00", "#ffffff", 6),
  RED("lv-red", "#b3161b", "#ffffff", 10),
  /** The area of an excursion. */
  OUTSIDE("outside", "#f6d5d2", null, 0),
  /** Amps and volts, over the area of an excursion too. */
  TRACE("trace", "#12161a", "#f6d5d2", 0),
  /** Marks on the area of an excursion. */
  OUTSIDE_MARK("outside-mark", "#8c1218", "#f6d5d2", 0);

  private final String style;
  private final String hex;
  private final String ground;
  private final int tenths;

  LevelColour(String style, String hex, String ground, int tenths) {
    this.style = style;
    this.hex = hex;
    this.ground = ground;
    this.tenths = tenths;
  }

  /** Name in the style sheet. */
  String style() {
    return style;
  }

  /** As style sheets write it. */
  String hex() {
    return hex;
  }

  /** The colour it stands on, as style sheets write it; null if it is a ground itself. */
  String ground() {
    return ground;
  }

  /** Tenths of a bar's height. */
  int tenths() {
    return tenths;
  }
}
