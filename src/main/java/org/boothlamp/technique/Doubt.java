package org.boothlamp.technique;

/** Why no cause is named. */
public enum Doubt {
  /** A cause is named. */
  NONE("none"),
  /** The change is not three times its uncertainty. */
  TOO_SMALL("the change is too small beside its uncertainty"),
  /** There is nothing to compare with: no steady part, no window. */
  NOTHING_TO_COMPARE("there is no steady part and no window to compare with"),
  /** Constant current, volts off from the first second with the amps right. */
  ARC_OR_SET_UP("arc length, or electrode, gas or leads"),
  /** Constant voltage, amps off from the first second with the volts right. */
  STICK_OUT_OR_FEED("stick-out, or wire feed"),
  /** Setting and hand together put it outside; neither alone would have. */
  HAND_AND_SETTING("setting and hand together"),
  /** Amps and volts did not move as the source's curve lets a hand move them. */
  NOT_ALONG_THE_CURVE("amps and volts did not move as a hand can move them"),
  /** The trace holds no RMS. */
  ALTERNATING("alternating current is not told from the trace");

  private final String word;

  Doubt(String word) {
    this.word = word;
  }

  /** The words for people and files. */
  public String word() {
    return word;
  }
}
