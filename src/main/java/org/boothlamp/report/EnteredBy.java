package org.boothlamp.report;

/** In which role somebody said something of a run. Never who: the log holds no names. */
public enum EnteredBy {
  /** Nobody said, as at a command line. */
  NOT_SAID(""),
  TRAINEE("trainee"),
  INSTRUCTOR("instructor");

  private final String word;

  EnteredBy(String word) {
    this.word = word;
  }

  /** As the log stores it. */
  public String word() {
    return word;
  }

  /** The role with this word; a word of a later version counts as not said. */
  public static EnteredBy ofWord(String word) {
    for (EnteredBy role : values()) {
      if (role.word.equals(word)) {
        return role;
      }
    }
    return NOT_SAID;
  }
}
