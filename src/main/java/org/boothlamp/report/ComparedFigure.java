package org.boothlamp.report;

import org.boothlamp.words.Phrases;

/**
 * One figure of two runs side by side. Immutable.
 *
 * @param key what it is, a name for programs that ends with its unit
 * @param unit unit symbol, or empty
 * @param decimals of the figure for people, 0 to 3
 * @param one the first run's; NaN if it is not known
 * @param beside the other's; NaN if it is not known or there is no other
 */
public record ComparedFigure(String key, String unit, int decimals, double one, double beside) {

  /** What it is, in words. */
  public String label(Phrases phrases) {
    return phrases.say("replay.figure." + key);
  }

  /** The first run's for people, with its unit. */
  public String oneText() {
    return text(one);
  }

  /** The other's for people, with its unit. */
  public String besideText() {
    return text(beside);
  }

  private String text(double value) {
    if (Double.isNaN(value)) {
      return "-";
    }
    String number = Numbers.fixed(value, decimals);
    return unit.isEmpty() ? number : number + Numbers.GLUE + unit;
  }
}
