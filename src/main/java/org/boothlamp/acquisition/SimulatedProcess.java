package org.boothlamp.acquisition;

/** What the simulated booth can weld, with the setting a trainee starts from. */
public enum SimulatedProcess {
  /** Covered electrode, 3.2 mm, on a drooping source of 72 V open circuit, positive. */
  STICK("stick", 110, 2.5),
  /** Wire of 0.9 mm in short-circuit transfer on a constant-voltage source, positive. */
  SHORT_ARC("short-arc", 142, 5),
  /** Tungsten electrode, negative, on a steeply drooping source with up-slope and crater fill. */
  TIG("tig", 100, 1.5),
  /** The same on square-wave alternating current. */
  TIG_AC("tig-ac", 100, 1.5);

  private final String word;
  private final double typicalAmps;
  private final double typicalTravelMmPerS;

  SimulatedProcess(String word, double typicalAmps, double typicalTravelMmPerS) {
    this.word = word;
    this.typicalAmps = typicalAmps;
    this.typicalTravelMmPerS = typicalTravelMmPerS;
  }

  /** The word used in settings. */
  public String word() {
    return word;
  }

  /** Setting of the machine if nothing else is asked for, amps. */
  public double typicalAmps() {
    return typicalAmps;
  }

  double typicalTravelMmPerS() {
    return typicalTravelMmPerS;
  }

  /** True if the electrode is struck on the work, and so can stick to it. */
  boolean isStruck() {
    return this == STICK;
  }

  /** True if the machine feeds wire, which lights the arc again by itself. */
  boolean feedsWire() {
    return this == SHORT_ARC;
  }

  /** The process with this word, or null if there is none. */
  public static SimulatedProcess ofWord(String word) {
    for (SimulatedProcess process : values()) {
      if (process.word.equals(word)) {
        return process;
      }
    }
    return null;
  }
}
