package org.boothlamp.sync;

/** Rows were not taken: says what is wrong, the next move, and whether trying again will help. */
public final class SyncException extends Exception {

  private static final long serialVersionUID = 1L;

  /** What happens next. */
  public enum Kind {
    /** Passes by itself: try again later. */
    LATER,
    /** A person has to put something right; tried again all the same. */
    SET_UP,
    /** The target refuses this row and will always do so. */
    ROW
  }

  private final Kind kind;
  private final String what;
  private final String nextMove;

  private SyncException(Kind kind, String what, String nextMove, Throwable cause) {
    super(nextMove.isEmpty() ? what : what + "; " + nextMove, cause);
    this.kind = kind;
    this.what = what;
    this.nextMove = nextMove;
  }

  static SyncException later(String what, String nextMove, Throwable cause) {
    return new SyncException(Kind.LATER, what, nextMove, cause);
  }

  static SyncException setUp(String what, String nextMove, Throwable cause) {
    return new SyncException(Kind.SET_UP, what, nextMove, cause);
  }

  static SyncException row(String what, Throwable cause) {
    return new SyncException(Kind.ROW, what, "", cause);
  }

  /** What happens next. */
  public Kind kind() {
    return kind;
  }

  /** What is wrong. */
  public String what() {
    return what;
  }

  /** What the person who reads this can do; may be empty. */
  public String nextMove() {
    return nextMove;
  }
}
