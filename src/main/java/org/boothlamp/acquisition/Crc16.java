package org.boothlamp.acquisition;

/**
 * CRC-16/IBM-3740: polynomial 0x1021, start value 0xFFFF, nothing reflected, nothing inverted. The
 * name is that of the CRC catalogue (reveng.sourceforge.io/crc-catalogue). Safe to share.
 */
final class Crc16 {

  private static final int POLYNOMIAL = 0x1021;
  private static final int START = 0xFFFF;
  private static final char[] TABLE = table();

  private Crc16() {}

  /** CRC of {@code length} bytes from {@code offset} on, 0 to 0xFFFF. */
  static int of(byte[] bytes, int offset, int length) {
    int crc = START;
    for (int i = offset; i < offset + length; i++) {
      crc = (crc << 8 & 0xFFFF) ^ TABLE[crc >>> 8 ^ bytes[i] & 0xFF];
    }
    return crc;
  }

  private static char[] table() {
    char[] table = new char[256];
    for (int value = 0; value < table.length; value++) {
      table[value] = (char) shiftedOut(value);
    }
    return table;
  }

  private static int shiftedOut(int value) {
    int crc = value << 8;
    for (int bit = 0; bit < 8; bit++) {
      crc = (crc & 0x8000) == 0 ? crc << 1 : crc << 1 ^ POLYNOMIAL;
    }
    return crc;
  }
}
