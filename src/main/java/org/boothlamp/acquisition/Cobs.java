package org.boothlamp.acquisition;

/**
 * Consistent Overhead Byte Stuffing (Cheshire and Baker, IEEE/ACM Transactions on Networking 7(2),
 * 1999): takes the zeros out of a frame, so that a zero can divide frames. The dividing zero is not
 * part of either form. Creates no objects. Safe to share.
 */
final class Cobs {

  /** Answer of {@link #decode} to bytes that no encoder can have written. */
  static final int MALFORMED = -1;

  /** Code of a group of 254 bytes without a zero after it. */
  private static final int FULL_GROUP = 0xFF;

  private Cobs() {}

  /** Most bytes that {@code length} bytes become: one more, and one for every full group. */
  static int encodedLimit(int length) {
    return length + 1 + length / (FULL_GROUP - 1);
  }

  /**
   * Encodes in the short form: no empty group after a full one at the end.
   *
   * @param to takes up to {@link #encodedLimit} bytes from {@code toOffset} on; not {@code from}
   * @return bytes written
   */
  static int encode(byte[] from, int offset, int length, byte[] to, int toOffset) {
    int end = offset + length;
    int codeAt = toOffset;
    int out = toOffset + 1;
    int code = 1;
    for (int in = offset; in < end; in++) {
      if (from[in] != 0) {
        to[out++] = from[in];
        code++;
      }
      if (from[in] == 0 || code == FULL_GROUP && in + 1 < end) {
        to[codeAt] = (byte) code;
        codeAt = out++;
        code = 1;
      }
    }
    to[codeAt] = (byte) code;
    return out - toOffset;
  }

  /**
   * Decodes both the short form and the one with an empty group after a full one at the end.
   *
   * @param to takes fewer bytes than {@code length}; may be {@code from} if {@code toOffset} is at
   *     most {@code offset}
   * @return bytes written, or {@link #MALFORMED}
   */
  static int decode(byte[] from, int offset, int length, byte[] to, int toOffset) {
    int end = offset + length;
    int in = offset;
    int out = toOffset;
    if (length == 0) {
      return MALFORMED;
    }
    while (in < end) {
      int code = from[in++] & 0xFF;
      int groupEnd = in + code - 1;
      if (code == 0 || groupEnd > end) {
        return MALFORMED;
      }
      while (in < groupEnd) {
        if (from[in] == 0) {
          return MALFORMED;
        }
        to[out++] = from[in++];
      }
      if (code != FULL_GROUP && in < end) {
        to[out++] = 0;
      }
    }
    return out - toOffset;
  }
}
