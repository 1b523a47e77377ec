package org.boothlamp.boothlog;

import java.nio.charset.StandardCharsets;

/**
 * A row as it is stored: each value a Long, Double, String, byte array, or null. Not to be changed
 * once made.
 *
 * @param layout its table and columns
 * @param values in the order of the columns
 */
public record StoredRow(RowLayout layout, Object[] values) {

  private static final int NUMBER_BYTES = 8;

  /** The value of a column, or null also where there is no such column. */
  public Object value(String column) {
    int index = layout.columns().indexOf(column);
    return index < 0 ? null : values[index];
  }

  /** A whole number that must be there. */
  public long number(String column) {
    if (value(column) instanceof Long number) {
      return number;
    }
    throw new IllegalArgumentException(
        "column "
            + column
            + " of "
            + layout.table()
            + " must hold a whole number, but holds "
            + value(column));
  }

  /** About how much memory and line it takes. */
  long bytes() {
    long bytes = 0;
    for (Object value : values) {
      bytes += bytes(value);
    }
    return bytes;
  }

  private static int bytes(Object value) {
    if (value instanceof byte[] blob) {
      return blob.length;
    }
    return value instanceof String text
        ? text.getBytes(StandardCharsets.UTF_8).length
        : NUMBER_BYTES;
  }
}
