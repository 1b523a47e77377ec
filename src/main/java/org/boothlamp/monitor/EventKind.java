package org.boothlamp.monitor;

/** What can happen to a booth besides welding. The word is stored in the log: never change one. */
public enum EventKind {
  /** The monitor was started. */
  STARTED("started", false),
  /** The monitor was stopped in order. */
  STOPPED("stopped", false),
  /** A trainee signed in, or out with an empty code. */
  SIGNED_IN("signed in", false),
  /** A sign-in names a procedure that cannot be loaded. */
  SIGN_IN_REFUSED("sign-in refused", false),
  /** The source delivered nothing for longer than it may. */
  NO_SAMPLES("no samples", true),
  /** Pairs that were sent and never arrived. */
  LOST_PAIRS("lost pairs", false),
  /** Frames that failed their check. */
  BAD_FRAMES("bad frames", false),
  /** The line was opened again after it had failed. */
  RECONNECTED("reconnected", false),
  /** The source changed its rate or range. */
  FORMAT_CHANGED("format changed", false),
  /** The current runs the other way than the procedure asks. */
  WRONG_POLARITY("wrong polarity", true),
  /** The log's queue was full: entries were lost. */
  LOG_QUEUE_FULL("log queue full", false),
  /** The log could not be written for a while. */
  LOG_STALLED("log stalled", false),
  /** A segment was running when the power went; closed at the next start. */
  POWER_LOSS("power loss", false);

  private final String word;
  private final boolean fault;

  EventKind(String word, boolean fault) {
    this.word = word;
    this.fault = fault;
  }

  /** The word stored in the log and shown to people. */
  public String word() {
    return word;
  }

  /** True if the lamp is in fault while this lasts. */
  public boolean isFault() {
    return fault;
  }
}
