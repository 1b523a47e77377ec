package org.boothlamp.acquisition;

/** What is at the bottom of a failure that libraries have wrapped. */
final class Causes {

  private Causes() {}

  /** The innermost message; the exception's name if it has none. */
  static String words(Throwable failure) {
    Throwable root = failure;
    while (root.getCause() != null) {
      root = root.getCause();
    }
    String message = root.getMessage();
    return message == null || message.isBlank() ? root.getClass().getSimpleName() : message;
  }
}
