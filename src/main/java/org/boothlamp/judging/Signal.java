package org.boothlamp.judging;

/** What the lamp shows; {@link #code} is its number in the lamp frame and in stored traces. */
public enum Signal {
  /** All off: the monitor is not running. */
  DARK(0),
  /** Alive, no arc. */
  IDLE(1),
  /** An arc is seen, not judged yet. */
  SETTLING(2),
  /** Inside the window. */
  GREEN(3),
  /** Inside, near a limit. */
  AMBER(4),
  /** Outside the window. */
  RED(5),
  /** Do not trust the lamp. */
  FAULT(6);

  private static final Signal[] BY_CODE = values();

  private final int code;

  Signal(int code) {
    this.code = code;
  }

  /** Number in the lamp frame, 0 to 6. */
  public int code() {
    return code;
  }

  /** The word for people and files: the name in lower case. */
  public String word() {
    return switch (this) {
      case DARK -> "dark";
      case IDLE -> "idle";
      case SETTLING -> "settling";
      case GREEN -> "green";
      case AMBER -> "amber";
      case RED -> "red";
      case FAULT -> "fault";
    };
  }

  /** The signal of a level. */
  public static Signal of(Level level) {
    return switch (level) {
      case GREEN -> GREEN;
      case AMBER -> AMBER;
      case RED -> RED;
    };
  }

  /** The signal with this code, or null if the code is outside 0 to 6. */
  public static Signal ofCode(int code) {
    return code < 0 || code >= BY_CODE.length ? null : BY_CODE[code];
  }

  /** The signal with this word, or null if there is none. */
  public static Signal ofWord(String word) {
    for (Signal signal : BY_CODE) {
      if (signal.word().equals(word)) {
        return signal;
      }
    }
    return null;
  }
}
