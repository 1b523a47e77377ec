package org.boothlamp.boothlog;

import java.nio.file.Path;

/** The booth log cannot be used: says what is wrong, where, and the next move. */
public final class BoothLogException extends RuntimeException {

  private static final long serialVersionUID = 1L;

  private final transient Path path;
  private final String nextMove;

  BoothLogException(String what, Path path, String nextMove, Throwable cause) {
    super("booth log " + path + ": " + what + "; " + nextMove, cause);
    this.path = path;
    this.nextMove = nextMove;
  }

  /** The file or folder it is about. */
  public Path path() {
    return path;
  }

  /** What the person who reads this can do. */
  public String nextMove() {
    return nextMove;
  }
}
