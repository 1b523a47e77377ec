package org.boothlamp.report;

import java.util.Locale;

/**
 * Free text as it may be shown. Characters that a reader cannot see but that move a terminal's
 * cursor, turn the writing direction round, end a document or stand for nothing are written out,
 * such as {@code [U+202E]}; everything else stays as it was typed.
 */
final class VisibleText {

  private VisibleText() {}

  /** The text with every such character written out; nothing for null. */
  static String of(String text) {
    if (text == null) {
      return "";
    }
    if (isPlain(text)) {
      return text;
    }
    StringBuilder out = new StringBuilder(text.length());
    text.codePoints().forEach(character -> append(out, character));
    return out.toString();
  }

  /** True for printable ASCII: nearly all that pages are made of, and quick to see. */
  private static boolean isPlain(String text) {
    for (int i = 0; i < text.length(); i++) {
      if (text.charAt(i) < ' ' || text.charAt(i) > '~') {
        return false;
      }
    }
    return true;
  }

  private static void append(StringBuilder out, int character) {
    if (isVisible(character)) {
      out.appendCodePoint(character);
    } else {
      out.append("[U+");
      String digits = Integer.toHexString(character).toUpperCase(Locale.ROOT);
      out.append("0".repeat(Math.max(0, 4 - digits.length()))).append(digits).append(']');
    }
  }

  private static boolean isVisible(int character) {
    return switch (Character.getType(character)) {
      case Character.CONTROL,
          Character.FORMAT,
          Character.SURROGATE,
          Character.LINE_SEPARATOR,
          Character.PARAGRAPH_SEPARATOR,
          Character.UNASSIGNED ->
          false;
      default -> true;
    };
  }
}
