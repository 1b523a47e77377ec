package org.boothlamp.monitor;

/** Why a segment ended. The word is stored in the log: never change one. */
public enum SegmentEnd {
  /** The current went off. */
  ARC_OFF("arc off"),
  /** No samples arrived for longer than a bridge: what came after is unknown. */
  GAP("gap"),
  /** The source ended or the monitor was stopped. */
  STOPPED("stopped"),
  /** The power went; the figures are those of the last save. */
  POWER_LOSS("power loss");

  private final String word;

  SegmentEnd(String word) {
    this.word = word;
  }

  /** The word stored in the log and shown to people. */
  public String word() {
    return word;
  }
}
