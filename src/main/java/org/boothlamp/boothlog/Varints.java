package org.boothlamp.boothlog;

import java.nio.ByteBuffer;

/** Takes SQLite's numbers of variable length out of bytes, one after the other. */
final class Varints {

  private static final int MOST_BYTES = 9;

  private final ByteBuffer bytes;
  private int place;

  Varints(ByteBuffer bytes, int place) {
    this.bytes = bytes;
    this.place = place;
  }

  /** Where the next number begins. */
  int place() {
    return place;
  }

  /** The next number of variable length. */
  long next() {
    long value = 0;
    for (int i = 1; i < MOST_BYTES; i++) {
      byte part = bytes.get(place++);
      value = value << 7 | part & 0x7f;
      if (part >= 0) {
        return value;
      }
    }
    return value << 8 | bytes.get(place++) & 0xff;
  }

  /** The next four bytes. */
  int nextInt() {
    place += 4;
    return bytes.getInt(place - 4);
  }
}
