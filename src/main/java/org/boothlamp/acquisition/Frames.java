package org.boothlamp.acquisition;

/**
 * Layout of the frames between host and front end. Little-endian; the CRC covers all before it;
 * COBS around it, a zero after it.
 *
 * <pre>
 * samples  u8 0x01, u8 counter, u32 index of first pair, u8 n, n x (i16 current, i16 voltage), u16 crc
 * hello    u8 0x02, u8 version, u32 pairs per second, i16 lowest, i16 highest, 16 bytes id, u16 crc
 * lamp     u8 0x10, u8 counter, u8 signal, u16 crc
 * </pre>
 */
final class Frames {

  static final byte DELIMITER = 0;

  static final int TYPE_SAMPLES = 0x01;
  static final int TYPE_HELLO = 0x02;
  static final int TYPE_LAMP = 0x10;

  static final int CRC_BYTES = 2;
  static final int PAIR_BYTES = 4;

  /** Bytes before the first pair. */
  static final int SAMPLES_HEAD_BYTES = 7;

  static final int HELLO_BYTES = 26 + CRC_BYTES;
  static final int LAMP_BYTES = 3 + CRC_BYTES;

  static final int SHORTEST_BYTES = LAMP_BYTES;
  static final int LONGEST_BYTES = samplesBytes(SamplesFrame.CAPACITY);

  /** Longest frame between two zeros, with room for an encoder that ends on an empty group. */
  static final int LONGEST_ENCODED_BYTES = Cobs.encodedLimit(LONGEST_BYTES) + 1;

  private Frames() {}

  static int samplesBytes(int pairs) {
    return SAMPLES_HEAD_BYTES + pairs * PAIR_BYTES + CRC_BYTES;
  }

  static int getU8(byte[] bytes, int at) {
    return bytes[at] & 0xFF;
  }

  static int getU16(byte[] bytes, int at) {
    return getU8(bytes, at) | getU8(bytes, at + 1) << 8;
  }

  static int getI32(byte[] bytes, int at) {
    return getU16(bytes, at) | getU16(bytes, at + 2) << 16;
  }

  static void put16(byte[] bytes, int at, int value) {
    bytes[at] = (byte) value;
    bytes[at + 1] = (byte) (value >> 8);
  }

  static void put32(byte[] bytes, int at, int value) {
    put16(bytes, at, value);
    put16(bytes, at + 2, value >> 16);
  }
}
