package org.boothlamp.cli;

/**
 * One line of a check. Immutable.
 *
 * @param part what was looked at
 * @param state how it is
 * @param detail in words
 * @param nextMove what to do; empty if nothing
 */
record Finding(String part, State state, String detail, String nextMove) {

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
    return new Finding(part, State.GOOD, detail, "");
  }

  static Finding note(String part, String detail, String nextMove) {
    return new Finding(part, State.NOTE, detail, nextMove);
  }

  static Finding bad(String part, String detail, String nextMove) {
    return new Finding(part, State.BAD, detail, nextMove);
  }
}
