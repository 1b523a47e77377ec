package org.boothlamp.acquisition;

import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.boothlamp.acquisition.SourceException.Reason;

/**
 * How the kernel stores one channel in a scan, from its {@code _index} and {@code _type} files;
 * Documentation/driver-api/iio/buffers.rst: {@code
 * [be|le]:[s|u]bits/storagebits[Xrepeat][>>shift]}. Immutable.
 *
 * @param index place among the channels of a scan
 * @param bytes bytes it takes, 1, 2, 4 or 8
 * @param bits valid bits after the shift
 * @param shift bits to shift right before the others are masked out
 */
record ScanElement(int index, int bytes, int bits, int shift, ByteOrderOf order, Sign sign) {

  /** Which byte comes first. */
  enum ByteOrderOf {
    /** The most significant. */
    BIG_ENDIAN,
    /** The least significant. */
    LITTLE_ENDIAN
  }

  /** Whether counts can be negative. */
  enum Sign {
    /** Two's complement. */
    SIGNED,
    /** From 0. */
    UNSIGNED
  }

  private static final Pattern TYPE =
      Pattern.compile("(be|le):([su])(\\d{1,2})/(8|16|32|64)(X1)?(>>(\\d{1,2}))?");

  private static final int LONG_BITS = 64;

  /**
   * Reads a type.
   *
   * @param where the file, for the message
   * @throws SourceException if it is none, or of repeated values
   */
  static ScanElement parse(String where, int index, String type) {
    Matcher matcher = TYPE.matcher(type);
    if (!matcher.matches()) {
      throw bad(where, type);
    }
    int bits = Integer.parseInt(matcher.group(3));
    int storage = Integer.parseInt(matcher.group(4));
    int shift = matcher.group(7) == null ? 0 : Integer.parseInt(matcher.group(7));
    if (bits < 1 || bits + shift > storage) {
      throw bad(where, type);
    }
    return new ScanElement(
        index,
        storage / Byte.SIZE,
        bits,
        shift,
        matcher.group(1).equals("be") ? ByteOrderOf.BIG_ENDIAN : ByteOrderOf.LITTLE_ENDIAN,
        matcher.group(2).equals("s") ? Sign.SIGNED : Sign.UNSIGNED);
  }

  private static SourceException bad(String where, String type) {
    return new SourceException(
        Reason.MALFORMED,
        where,
        "must say how one value is stored, such as be:u12/16>>0, and says \"" + type + "\"",
        "use another channel or device");
  }

  /** The value that is stored at {@code offset}. */
  long value(byte[] scan, int offset) {
    long raw = 0;
    for (int i = 0; i < bytes; i++) {
      int at = order == ByteOrderOf.BIG_ENDIAN ? i : bytes - 1 - i;
      raw = raw << Byte.SIZE | scan[offset + at] & 0xFF;
    }
    int above = LONG_BITS - bits - shift;
    return sign == Sign.SIGNED ? raw << above >> above + shift : raw << above >>> above + shift;
  }

  /** Lowest value it can store. */
  long lowest() {
    return sign == Sign.SIGNED ? -(1L << bits - 1) : 0;
  }

  /** Highest value it can store. */
  long highest() {
    return (1L << (sign == Sign.SIGNED ? bits - 1 : bits)) - 1;
  }

  /** True if every value fits a count. */
  boolean isCount() {
    return bits <= Short.SIZE && lowest() >= Short.MIN_VALUE && highest() <= Short.MAX_VALUE;
  }
}
