package org.boothlamp.cli;

/**
 * One line of a check. Immutable.
 *
 * @param part what was looked at
 * @param state how it is
 * @param detail in words
 * @param nextMove what to do; empty if nothing
 * @param fault the fault of the sensors that it is about; null if it is about none
 */
record Finding(String part, State state, String detail, String nextMove, Fault fault) {

  /**
   * What was looked for. Immutable.
   *
   * @param word its word in the log
   * @param judged true if what was heard could tell
   * @param limit from where on it is a fault, in words
   */
  record Fault(String word, boolean judged, String limit) {}

  /** How a part is. */
  enum State {
    /** Works. */
    GOOD("good"),
    /** Works, but somebody should know. */
    NOTE("note"),
    /** Does not work. */
    BAD("bad");

    private final String word;

    State(String word) {
      this.word = word;
    }

    String word() {
      return word;
    }
  }

  static Finding good(String part, String detail) {
    return new Finding(part, State.GOOD, detail, "", null);
  }

  static Finding note(String part, String detail, String nextMove) {
    return new Finding(part, State.NOTE, detail, nextMove, null);
  }

  static Finding bad(String part, String detail, String nextMove) {
    return new Finding(part, State.BAD, detail, nextMove, null);
  }

  /** The same, about a fault of the sensors. */
  Finding about(Fault about) {
    return new Finding(part, state, detail, nextMove, about);
  }
}
