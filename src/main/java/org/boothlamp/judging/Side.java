package org.boothlamp.judging;

/** On which side of its window an average lies. */
public enum Side {
  /** Below the low limit. */
  LOW("low"),
  /** Above the high limit. */
  HIGH("high");

  private final String word;

  Side(String word) {
    this.word = word;
  }

  /** The word for people and files. */
  public String word() {
    return word;
  }
}
