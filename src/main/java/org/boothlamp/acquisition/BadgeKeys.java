package org.boothlamp.acquisition;

import java.util.HashMap;
import java.util.Map;

/**
 * The keys that a badge reader presses, by the kernel's key codes (linux/input-event-codes.h), on
 * the keyboard that readers pose as unless told otherwise: that of the United States.
 */
final class BadgeKeys {

  /** No character, such as a key of another kind. */
  static final char NONE = 0;

  private static final Map<Integer, Character> CHARACTERS = characters();

  private BadgeKeys() {}

  private static Map<Integer, Character> characters() {
    Map<Integer, Character> keys = new HashMap<>();
    row(keys, 2, "1234567890-");
    row(keys, 16, "qwertyuiop");
    row(keys, 30, "asdfghjkl");
    row(keys, 44, "zxcvbnm");
    keys.put(52, '.');
    row(keys, 71, "789-456");
    row(keys, 79, "1230.");
    return Map.copyOf(keys);
  }

  private static void row(Map<Integer, Character> keys, int first, String characters) {
    for (int i = 0; i < characters.length(); i++) {
      keys.put(first + i, characters.charAt(i));
    }
  }

  /** What a key types; {@link #NONE} if it is no letter, digit, hyphen, dot or underscore. */
  static char character(int key, boolean shift) {
    char character = CHARACTERS.getOrDefault(key, NONE);
    if (!shift || character == NONE) {
      return character;
    }
    if (Character.isLetter(character)) {
      return Character.toUpperCase(character);
    }
    return key == 12 ? '_' : NONE;
  }

  static boolean isEnter(int key) {
    return key == 28 || key == 96;
  }

  static boolean isShift(int key) {
    return key == 42 || key == 54;
  }
}
