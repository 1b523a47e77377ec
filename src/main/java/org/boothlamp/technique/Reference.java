package org.boothlamp.technique;

/** What the amps and volts of a spell are compared with. */
public enum Reference {
  /** The trainee's own steady part of the same run. */
  OWN_STEADY_PART("own steady part"),
  /** The middle of the procedure's windows. */
  PROCEDURE("procedure"),
  /** Nothing. */
  NONE("none");

  private final String word;

  Reference(String word) {
    this.word = word;
  }

  /** The word for people and files. */
  public String word() {
    return word;
  }
}
