package org.boothlamp.page;

/** The page cannot be opened: what is wrong, and the next move. */
public final class PageStartException extends RuntimeException {

  private static final long serialVersionUID = 1L;

  PageStartException(String what, String nextMove, Throwable cause) {
    super(what + "; " + nextMove, cause);
  }
}
