package org.boothlamp.page;

import java.util.Locale;

/** Every colour of the pages, and what each may stand on. */
enum ScreenColour {
  PAPER("#ffffff", null, 0),
  INK("#181c20", PAPER, ScreenColour.TEXT),
  QUIET("#4a545e", PAPER, ScreenColour.TEXT),
  LINK("#0b4f82", PAPER, ScreenColour.TEXT),
  EDGE("#737d87", PAPER, ScreenColour.GRAPHIC),
  PANEL("#eef2f5", null, 0),
  INK_ON_PANEL("#181c20", PANEL, ScreenColour.TEXT),
  QUIET_ON_PANEL("#46505a", PANEL, ScreenColour.TEXT),
  EDGE_ON_PANEL("#6f7983", PANEL, ScreenColour.GRAPHIC),
  LINK_ON_PANEL("#0b4f82", PANEL, ScreenColour.TEXT),
  BUTTON("#0b4f82", PAPER, ScreenColour.GRAPHIC),
  ON_BUTTON("#ffffff", BUTTON, ScreenColour.TEXT),
  PROBLEM_GROUND("#fdecea", null, 0),
  PROBLEM("#7d1410", PROBLEM_GROUND, ScreenColour.TEXT),
  HOUSING("#14181c", PAPER, ScreenColour.GRAPHIC),
  UNLIT("#7d8791", HOUSING, ScreenColour.GRAPHIC),
  RED("#ff6b5e", HOUSING, ScreenColour.GRAPHIC),
  AMBER("#ffc83d", HOUSING, ScreenColour.GRAPHIC),
  GREEN("#4fe08f", HOUSING, ScreenColour.GRAPHIC),
  SIGN_ON_RED("#2a0502", RED, ScreenColour.TEXT),
  SIGN_ON_AMBER("#2a1d00", AMBER, ScreenColour.TEXT),
  SIGN_ON_GREEN("#02230f", GREEN, ScreenColour.TEXT),
  WORD_RED("#9c1a12", PAPER, ScreenColour.TEXT),
  WORD_AMBER("#7a4b00", PAPER, ScreenColour.TEXT),
  WORD_GREEN("#0c5a2d", PAPER, ScreenColour.TEXT),
  WINDOW("#d3ecd9", null, 0),
  AVERAGE("#10243a", WINDOW, ScreenColour.GRAPHIC),
  RAW("#5f7183", WINDOW, ScreenColour.GRAPHIC),
  BESIDE("#8a3f00", WINDOW, ScreenColour.GRAPHIC),
  NOW("#0b4f82", WINDOW, ScreenColour.GRAPHIC),
  LIMIT("#8c1d18", PAPER, ScreenColour.GRAPHIC);

  /** Least contrast of text (WCAG 2.2, 1.4.3, level AA; from memory). */
  static final double TEXT = 4.5;

  /** Least contrast of parts and marks that carry meaning (WCAG 2.2, 1.4.11; from memory). */
  static final double GRAPHIC = 3;

  private final String hex;
  private final ScreenColour ground;
  private final double leastContrast;

  ScreenColour(String hex, ScreenColour ground, double leastContrast) {
    this.hex = hex;
    this.ground = ground;
    this.leastContrast = leastContrast;
  }

  /** As style sheets write it. */
  String hex() {
    return hex;
  }

  /** What it stands on; null if it is a ground itself. */
  ScreenColour ground() {
    return ground;
  }

  /** The contrast it must have to its ground, 1 to 21. */
  double leastContrast() {
    return leastContrast;
  }

  /** Its name in the style sheet, such as {@code --ink-on-panel}. */
  String variable() {
    return "--" + name().toLowerCase(Locale.ROOT).replace('_', '-');
  }
}
