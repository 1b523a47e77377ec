package org.boothlamp.procedure;

/** What the welding machine holds steady. */
public enum Characteristic {
  /** Constant current: a longer arc lifts the volts and drops the amps a little. */
  CONSTANT_CURRENT("cc"),
  /** Constant voltage: a longer stick-out drops the amps. */
  CONSTANT_VOLTAGE("cv");

  private final String word;

  Characteristic(String word) {
    this.word = word;
  }

  /** The word used in procedure files. */
  public String word() {
    return word;
  }

  /** The characteristic with this word, or null if there is none. */
  public static Characteristic ofWord(String word) {
    for (Characteristic characteristic : values()) {
      if (characteristic.word.equals(word)) {
        return characteristic;
      }
    }
    return null;
  }
}
