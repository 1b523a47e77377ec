package org.boothlamp.page;

/** An answer other than the one asked for, in the words of a phrase. */
public final class PageException extends RuntimeException {

  private static final long serialVersionUID = 1L;

  private final int status;
  private final String key;
  private final transient Object[] parts;

  /**
   * An answer with a status.
   *
   * @param status of HTTP, 400 to 599
   * @param key phrase that says what is wrong and what to do
   * @param parts of the phrase
   */
  public PageException(int status, String key, Object... parts) {
    super(key);
    this.status = status;
    this.key = key;
    this.parts = parts.clone();
  }

  int status() {
    return status;
  }

  String key() {
    return key;
  }

  Object[] parts() {
    return parts.clone();
  }
}
