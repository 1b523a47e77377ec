package org.boothlamp.lamp;

import java.io.IOException;

/** A lamp output that cannot be opened; the message says what, where, and the next move. */
public final class LampUnavailableException extends IOException {

  private static final long serialVersionUID = 1L;

  LampUnavailableException(String message, Throwable cause) {
    super(message, cause);
  }
}
