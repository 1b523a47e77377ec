package org.boothlamp.acquisition;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.util.Map;

/**
 * The bytes that the kernel hands to a program when a badge reader types: for each key its scan
 * code, the key itself, and the end of the report, pressed and released (linux/input.h and
 * linux/input-event-codes.h, Linux 6.1). Confined to one thread.
 */
final class TypedKeys {

  private static final int MISC_SCAN = 4;
  private static final int ENTER = 28;
  private static final int LEFT_SHIFT = 42;
  private static final Map<Character, Integer> KEYS =
      Map.ofEntries(
          Map.entry('1', 2),
          Map.entry('4', 5),
          Map.entry('7', 8),
          Map.entry('0', 11),
          Map.entry('-', 12),
          Map.entry('t', 20),
          Map.entry('a', 30),
          Map.entry('z', 44),
          Map.entry('m', 50),
          Map.entry('.', 52),
          Map.entry('p', 25));

  private final boolean wide;
  private final ByteBuffer bytes = ByteBuffer.allocate(64 * 1024).order(ByteOrder.nativeOrder());
  private long micros = 1_772_434_800_123_456L;

  /** Events of a program with 64 bits, or with 32. */
  TypedKeys(InputEventLayout layout) {
    wide = layout == InputEventLayout.BITS_64;
  }

  /** A code and Enter. */
  TypedKeys type(String code) {
    for (char character : code.toCharArray()) {
      if (Character.isUpperCase(character) || character == '_') {
        event(1, LEFT_SHIFT, 1);
        press(KEYS.get(character == '_' ? '-' : Character.toLowerCase(character)));
        event(1, LEFT_SHIFT, 0);
      } else {
        press(KEYS.get(character));
      }
    }
    return press(ENTER);
  }

  /** A key goes down and up. */
  TypedKeys press(int key) {
    event(MISC_SCAN, 4, 0x7001e).event(1, key, 1).event(0, 0, 0);
    return event(1, key, 0).event(0, 0, 0);
  }

  TypedKeys event(int type, int code, int value) {
    micros += 1_500;
    if (wide) {
      bytes.putLong(micros / 1_000_000).putLong(micros % 1_000_000);
    } else {
      bytes.putInt((int) (micros / 1_000_000)).putInt((int) (micros % 1_000_000));
    }
    bytes.putShort((short) type).putShort((short) code).putInt(value);
    return this;
  }

  byte[] bytes() {
    byte[] all = new byte[bytes.position()];
    bytes.get(0, all);
    return all;
  }
}
