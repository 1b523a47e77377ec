package org.boothlamp.signal;

/** Kind of current, electrode against work. */
public enum Polarity {
  /** Electrode positive. */
  DC_PLUS("dc+"),
  /** Electrode negative. */
  DC_MINUS("dc-"),
  /** Alternating: neither side carries the current for long. */
  AC("ac");

  /**
   * Share of the rectified mean that the plain mean must reach before a current counts as direct. A
   * pure DC arc gives 1, a balanced AC arc 0, an AC arc with 75 % on one side 0.5.
   */
  private static final double DIRECT_SHARE = 0.8;

  private final String word;

  Polarity(String word) {
    this.word = word;
  }

  /** The word used in procedure files and reports: {@code dc+}, {@code dc-} or {@code ac}. */
  public String word() {
    return word;
  }

  /** Polarity from the plain and the rectified mean of the current, both in amps. */
  public static Polarity of(double meanAmps, double meanAbsoluteAmps) {
    if (Math.abs(meanAmps) < DIRECT_SHARE * meanAbsoluteAmps) {
      return AC;
    }
    return meanAmps < 0 ? DC_MINUS : DC_PLUS;
  }

  /** The polarity with this word, or null if there is none. */
  public static Polarity ofWord(String word) {
    for (Polarity polarity : values()) {
      if (polarity.word.equals(word)) {
        return polarity;
      }
    }
    return null;
  }
}
