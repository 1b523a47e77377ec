package org.boothlamp.boothlog;

import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;

/**
 * Decodes a row as SQLite stores it. Layout: SQLite, "Database File Format", section 2.1, Record
 * Format.
 */
final class RecordFormat {

  private RecordFormat() {}

  /**
   * The values in the order they are stored in: null, Long, Double, String or byte[].
   *
   * @return null if the bytes are no row
   */
  static Object[] decode(byte[] payload) {
    try {
      return values(ByteBuffer.wrap(payload));
    } catch (IndexOutOfBoundsException | CharacterCodingException noRow) {
      return null;
    }
  }

  private static Object[] values(ByteBuffer row) throws CharacterCodingException {
    Varints header = new Varints(row, 0);
    long headerEnd = header.next();
    List<Long> types = new ArrayList<>();
    while (header.place() < headerEnd) {
      types.add(header.next());
    }
    if (header.place() != headerEnd) {
      return null;
    }
    Object[] values = new Object[types.size()];
    int place = (int) headerEnd;
    for (int i = 0; i < values.length; i++) {
      long length = lengthOf(types.get(i));
      if (length < 0 || place + length > row.capacity()) {
        return null;
      }
      values[i] = value(row.slice(place, (int) length), types.get(i));
      place += (int) length;
    }
    return place == row.capacity() ? values : null;
  }

  private static long lengthOf(long type) {
    if (type >= 12) {
      return (type - 12) / 2;
    }
    return switch ((int) type) {
      case 0, 8, 9 -> 0;
      case 1, 2, 3, 4 -> type;
      case 5 -> 6;
      case 6, 7 -> 8;
      default -> -1;
    };
  }

  private static Object value(ByteBuffer bytes, long type) throws CharacterCodingException {
    if (type >= 12) {
      return type % 2 == 0 ? blob(bytes) : text(bytes);
    }
    return switch ((int) type) {
      case 0 -> null;
      case 7 -> bytes.getDouble(0);
      case 8 -> 0L;
      case 9 -> 1L;
      default -> whole(bytes);
    };
  }

  private static long whole(ByteBuffer bytes) {
    long value = bytes.get(0);
    for (int i = 1; i < bytes.capacity(); i++) {
      value = value << 8 | bytes.get(i) & 0xff;
    }
    return value;
  }

  private static byte[] blob(ByteBuffer bytes) {
    byte[] copy = new byte[bytes.capacity()];
    bytes.get(0, copy);
    return copy;
  }

  private static String text(ByteBuffer bytes) throws CharacterCodingException {
    return StandardCharsets.UTF_8.newDecoder().decode(bytes).toString();
  }
}
