package org.boothlamp.acquisition;

/** A source that cannot be read, and what a person can do about it. Immutable. */
public final class SourceException extends RuntimeException {

  private static final long serialVersionUID = 1L;

  /** What kind of trouble it is. */
  public enum Reason {
    /** The device or file is not there. */
    MISSING,
    /** Another program holds the device. */
    BUSY,
    /** This user may not open it. */
    NOT_PERMITTED,
    /** It is there, but it is not what it should be. */
    MALFORMED,
    /** It was fine and then reading or writing failed. */
    FAILED
  }

  private final Reason reason;
  private final String what;
  private final String where;
  private final String nextMove;

  /**
   * An error that names its next move.
   *
   * @param reason the kind of trouble
   * @param where device or file; line and key if there are any
   * @param what the rule and the value that broke it
   * @param nextMove what to do now
   */
  public SourceException(Reason reason, String where, String what, String nextMove) {
    super(where + ": " + what + "; " + nextMove);
    this.reason = reason;
    this.where = where;
    this.what = what;
    this.nextMove = nextMove;
  }

  SourceException(Reason reason, String where, String what, String nextMove, Throwable cause) {
    this(reason, where, what, nextMove);
    initCause(cause);
  }

  /** The kind of trouble. */
  public Reason reason() {
    return reason;
  }

  /** The rule and the value that broke it. */
  public String what() {
    return what;
  }

  /** Device or file, line, key. */
  public String where() {
    return where;
  }

  /** What to do now. */
  public String nextMove() {
    return nextMove;
  }
}
