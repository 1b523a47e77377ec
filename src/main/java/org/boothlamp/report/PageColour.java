package org.boothlamp.report;

/** Every colour of a printed page, and what each may stand on. */
enum PageColour {
  PAPER("#ffffff", null, 0),
  INK("#1b1f23", PAPER, PageColour.TEXT),
  MUTED("#4b5563", PAPER, PageColour.TEXT),
  TINT("#eef1f4", null, 0),
  INK_ON_TINT("#1b1f24", TINT, PageColour.TEXT),
  GOOD_TINT("#e5f3ea", null, 0),
  GOOD("#0b4f2a", GOOD_TINT, PageColour.TEXT),
  BAD_TINT("#fbe9e7", null, 0),
  BAD("#7a1212", BAD_TINT, PageColour.TEXT),
  DOUBT_TINT("#fff3d1", null, 0),
  DOUBT("#5c3b00", DOUBT_TINT, PageColour.TEXT),
  RULE("#7b848e", PAPER, PageColour.GRAPHIC),
  BAND("#dfe9f1", null, 0),
  BAND_EDGE("#3f6f91", BAND, PageColour.GRAPHIC),
  MARK("#12161a", BAND, PageColour.GRAPHIC),
  LIMIT("#8c1d18", PAPER, PageColour.GRAPHIC);

  /** Least contrast of text (WCAG 2.1, 1.4.3, level AA; from memory). */
  static final double TEXT = 4.5;

  /** Least contrast of lines and marks that carry meaning (WCAG 2.1, 1.4.11, level AA). */
  static final double GRAPHIC = 3;

  private final String hex;
  private final PageColour ground;
  private final double leastContrast;

  PageColour(String hex, PageColour ground, double leastContrast) {
    this.hex = hex;
    this.ground = ground;
    this.leastContrast = leastContrast;
  }

  /** As style sheets write it. */
  String hex() {
    return hex;
  }

  /** What it stands on; null if it is a ground itself. */
  PageColour ground() {
    return ground;
  }

  /** The contrast it must have to its ground, 1 to 21. */
  double leastContrast() {
    return leastContrast;
  }
}
