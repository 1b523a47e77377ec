package org.boothlamp.acquisition;

/**
 * Puts the characters of a badge together. A code that stops in the middle is dropped when the next
 * one begins, so that no badge is read with the rest of another. Confined to one thread.
 */
final class BadgeText {

  /**
   * A reader sends a code at once: after such a pause another begins. Common practice, no source.
   */
  private static final long PAUSE_NANOS = 2_000_000_000L;

  private final StringBuilder text = new StringBuilder(BadgeReader.LONGEST_CODE);
  private boolean tooLong;
  private long lastNanos;

  /** Takes a character; what is not printable ASCII is passed over, and so are blanks. */
  void add(char character, long nowNanos) {
    if (nowNanos - lastNanos > PAUSE_NANOS) {
      clear();
    }
    lastNanos = nowNanos;
    if (character <= ' ' || character > '~') {
      return;
    }
    tooLong |= text.length() == BadgeReader.LONGEST_CODE;
    if (!tooLong) {
      text.append(character);
    }
  }

  /** The code that ends here; null if there is none, or it was too long. */
  String end(long nowNanos) {
    add(' ', nowNanos);
    String code = tooLong || text.length() == 0 ? null : text.toString();
    clear();
    return code;
  }

  void clear() {
    text.setLength(0);
    tooLong = false;
  }
}
