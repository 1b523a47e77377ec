package org.boothlamp.acquisition;

/** What a reader on a serial line sends after a code. */
public enum BadgeEnding {
  /** Carriage return, line feed, or both. */
  LINE("line"),
  /** The byte 3, end of text; line ends inside the code are passed over. */
  ETX("etx");

  private static final int END_OF_TEXT = 3;

  private final String word;

  BadgeEnding(String word) {
    this.word = word;
  }

  /** Word in booth.toml. */
  public String word() {
    return word;
  }

  boolean isEnd(int character) {
    return this == ETX ? character == END_OF_TEXT : character == '\r' || character == '\n';
  }
}
