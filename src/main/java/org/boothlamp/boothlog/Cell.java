package org.boothlamp.boothlog;

import java.nio.ByteBuffer;

/**
 * One entry of a page: a row, or the way to a child. Layout: SQLite, "Database File Format",
 * section 1.6. Immutable.
 *
 * @param place first byte on the page
 * @param end first byte behind it
 * @param child page of the entries before this one; 0 on a leaf
 * @param rowid key of a table's row; 0 in an index
 * @param payloadPlace first byte of the row
 * @param payloadBytes length of the row, wherever it lies; 0 if the entry is no row
 * @param localBytes how much of it lies on this page
 * @param overflowPage page on which it goes on; 0 if it does not
 */
record Cell(
    int place,
    int end,
    int child,
    long rowid,
    int payloadPlace,
    long payloadBytes,
    int localBytes,
    int overflowPage) {

  /** The entry at a place of a page, or null if there can be none. */
  static Cell at(ByteBuffer page, int place, BtreePage.Kind kind) {
    try {
      return read(page, place, kind);
    } catch (IndexOutOfBoundsException runsOutOfThePage) {
      return null;
    }
  }

  private static Cell read(ByteBuffer page, int place, BtreePage.Kind kind) {
    Varints numbers = new Varints(page, place);
    int child = kind.isInterior() ? numbers.nextInt() : 0;
    long payload = kind == BtreePage.Kind.INTERIOR_TABLE ? 0 : numbers.next();
    long rowid = kind.isTable() ? numbers.next() : 0;
    int start = numbers.place();
    int local = localBytes(payload, page.capacity(), kind);
    int end = start + local + (local < payload ? 4 : 0);
    if (local < 0 || end > page.capacity()) {
      return null;
    }
    int overflow = local < payload ? page.getInt(start + local) : 0;
    return new Cell(place, end, child, rowid, start, payload, local, overflow);
  }

  private static int localBytes(long payload, int usable, BtreePage.Kind kind) {
    int most = kind.isTable() ? usable - 35 : (usable - 12) * 64 / 255 - 23;
    if (payload < 0 || payload > Integer.MAX_VALUE / 2) {
      return -1;
    }
    if (payload <= most) {
      return (int) payload;
    }
    int least = (usable - 12) * 32 / 255 - 23;
    int filling = least + (int) ((payload - least) % (usable - 4));
    return filling <= most ? filling : least;
  }
}
