package org.boothlamp.cli;

/** A part of the booth cannot be had; the message says what, where, and the next move. */
public final class PartsException extends RuntimeException {

  private static final long serialVersionUID = 1L;

  /** A refusal with its cause. */
  public PartsException(String message, Throwable cause) {
    super(message, cause);
  }
}
