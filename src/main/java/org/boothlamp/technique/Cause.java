package org.boothlamp.technique;

/** What put an average outside its window. */
public enum Cause {
  /** The hand let the arc grow. */
  ARC_LONGER("arc longer"),
  /** The hand went too near. */
  ARC_SHORTER("arc shorter"),
  /** The hand held the contact tip too far away. */
  STICK_OUT_LONGER("stick-out longer"),
  /** The hand held the contact tip too near. */
  STICK_OUT_SHORTER("stick-out shorter"),
  /** The machine is set wrong. */
  MACHINE_SETTING("machine setting"),
  /** Up-slope or crater fill: the machine's programme, nobody's mistake. */
  SLOPE("slope or crater fill"),
  /** Movement in and out that the procedure asks for. */
  WHIP("whip"),
  /** The uncertainty supports none. */
  CANNOT_TELL("cannot tell");

  private final String word;

  Cause(String word) {
    this.word = word;
  }

  /** The word for people and files. */
  public String word() {
    return word;
  }

  /** True if it is something the trainee's hand did. */
  public boolean isHand() {
    return switch (this) {
      case ARC_LONGER, ARC_SHORTER, STICK_OUT_LONGER, STICK_OUT_SHORTER -> true;
      case MACHINE_SETTING, SLOPE, WHIP, CANNOT_TELL -> false;
    };
  }
}
