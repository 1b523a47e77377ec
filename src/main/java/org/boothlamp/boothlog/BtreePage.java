package org.boothlamp.boothlog;

import java.nio.ByteBuffer;
import java.util.Arrays;

/**
 * One page of a table or an index. Whatever does not look exactly as SQLite leaves a page is no
 * page: noise must not become rows. Layout: SQLite, "Database File Format", section 1.6, B-tree
 * Pages. Immutable.
 */
final class BtreePage {

  /** What a page holds, by its first byte. */
  enum Kind {
    INTERIOR_INDEX(2),
    INTERIOR_TABLE(5),
    LEAF_INDEX(10),
    LEAF_TABLE(13);

    private final int code;

    Kind(int code) {
      this.code = code;
    }

    boolean isInterior() {
      return this == INTERIOR_INDEX || this == INTERIOR_TABLE;
    }

    boolean isTable() {
      return this == INTERIOR_TABLE || this == LEAF_TABLE;
    }

    static Kind of(int code) {
      return Arrays.stream(values()).filter(kind -> kind.code == code).findFirst().orElse(null);
    }
  }

  /** The first page begins with the file's own header. */
  private static final int FILE_HEADER_BYTES = 100;

  private static final int MOST_FRAGMENT_BYTES = 60;

  private final ByteBuffer page;
  private final Kind kind;
  private final Cell[] cells;
  private final int rightChild;

  private BtreePage(ByteBuffer page, Kind kind, Cell[] cells, int rightChild) {
    this.page = page;
    this.kind = kind;
    this.cells = cells;
    this.rightChild = rightChild;
  }

  /** The page, or null if it is none. */
  static BtreePage of(ByteBuffer page, int number) {
    int at = number == 1 ? FILE_HEADER_BYTES : 0;
    Kind kind = Kind.of(page.get(at));
    if (kind == null || (page.get(at + 7) & 0xff) > MOST_FRAGMENT_BYTES) {
      return null;
    }
    int count = page.getShort(at + 3) & 0xffff;
    int contentStart = page.getShort(at + 5) & 0xffff;
    contentStart = contentStart == 0 ? 65_536 : contentStart;
    int pointers = at + (kind.isInterior() ? 12 : 8);
    if (pointers + 2 * count > contentStart || contentStart > page.capacity()) {
      return null;
    }
    Cell[] cells = new Cell[count];
    for (int i = 0; i < count; i++) {
      int place = page.getShort(pointers + 2 * i) & 0xffff;
      cells[i] = place < contentStart ? null : Cell.at(page, place, kind);
      if (cells[i] == null) {
        return null;
      }
    }
    int right = kind.isInterior() ? page.getInt(at + 8) : 0;
    return areApart(cells) && areInOrder(cells, kind)
        ? new BtreePage(page, kind, cells, right)
        : null;
  }

  private static boolean areApart(Cell[] cells) {
    Cell[] byPlace = cells.clone();
    Arrays.sort(byPlace, (one, other) -> Integer.compare(one.place(), other.place()));
    for (int i = 1; i < byPlace.length; i++) {
      if (byPlace[i - 1].end() > byPlace[i].place()) {
        return false;
      }
    }
    return true;
  }

  private static boolean areInOrder(Cell[] cells, Kind kind) {
    for (int i = 1; kind.isTable() && i < cells.length; i++) {
      if (cells[i - 1].rowid() >= cells[i].rowid()) {
        return false;
      }
    }
    return true;
  }

  ByteBuffer bytes() {
    return page;
  }

  Kind kind() {
    return kind;
  }

  /** The entries of this page, by key. */
  Cell[] cells() {
    return cells;
  }

  /** The child behind the last entry; interior pages only. */
  int rightChild() {
    return rightChild;
  }

  /** True if there is a row on it, which interior pages of indexes have as well. */
  boolean holdsRows() {
    return kind != Kind.INTERIOR_TABLE && cells.length > 0;
  }
}
