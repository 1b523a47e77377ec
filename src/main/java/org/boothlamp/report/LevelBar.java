package org.boothlamp.report;

import org.boothlamp.report.TextPage.Style;

/** Green, amber and red time as a bar of three different signs, so that it reads without colour. */
final class LevelBar {

  /** Length of a full bar, characters. */
  static final int WIDTH = 14;

  private LevelBar() {}

  /** Appends the bar, or as many spaces if nothing was judged. */
  static void append(TextPage page, Figures figures) {
    if (!(figures.judgedSeconds() > 0)) {
      page.spaces(WIDTH);
      return;
    }
    int[] cells = cells(figures.greenSeconds(), figures.amberSeconds(), figures.redSeconds());
    page.styled("=".repeat(cells[0]), Style.GREEN);
    page.styled("~".repeat(cells[1]), Style.AMBER);
    page.styled("!".repeat(cells[2]), Style.RED);
  }

  /**
   * Shares the bar out. A part that is not zero has at least one cell, so that a short red spell is
   * seen; the largest part takes what rounding leaves.
   */
  static int[] cells(double... seconds) {
    double total = 0;
    for (double part : seconds) {
      total += part;
    }
    int[] cells = new int[seconds.length];
    int left = WIDTH;
    int largest = 0;
    for (int i = 0; i < seconds.length; i++) {
      cells[i] = seconds[i] > 0 ? (int) Math.max(1, Math.round(WIDTH * seconds[i] / total)) : 0;
      left -= cells[i];
      largest = seconds[i] > seconds[largest] ? i : largest;
    }
    cells[largest] += left;
    return cells;
  }
}
