package org.boothlamp.cli;

/** A command could not do what it was asked; the message says what, where, and the next move. */
final class CommandFailedException extends RuntimeException {

  private static final long serialVersionUID = 1L;

  CommandFailedException(String message) {
    super(message);
  }
}
