package org.boothlamp.boothlog;

import java.io.IOException;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Predicate;

/**
 * Which pages of a damaged file hold rows of which table. Follows each table from its root as far
 * as pages are whole; pages that nothing leads to any more are left over, and may belong to any
 * table whose way was cut. Confined to one thread.
 */
final class DamagedTables {

  /** Every file's table of tables. */
  static final int SCHEMA_ROOT = 1;

  /** No row of a log comes near: what claims to be longer is noise. */
  private static final int LONGEST_ROW_BYTES = 1 << 20;

  private static final String SEQUENCE = "sqlite_sequence";
  private static final String IDENTITY = "log_identity";

  private final DamagedFile file;
  private final BitSet seen = new BitSet();
  private final Map<String, List<Integer>> pages = new HashMap<>();
  private final Set<String> cut = new HashSet<>();
  private final List<Integer> leftOver = new ArrayList<>();
  private int lostPages;
  private boolean schemaWhole;

  private DamagedTables(DamagedFile file) {
    this.file = file;
  }

  /**
   * The highest row number that was ever dealt out in each table: a few pages tell it.
   *
   * @return null if one of them is lost
   */
  static Map<String, Long> sequenceOf(DamagedFile file) throws IOException {
    DamagedTables tables = new DamagedTables(file);
    tables.followAll(SEQUENCE::equals);
    return tables.sequence();
  }

  /**
   * Which log it is, as other places know it: a page or two tell it.
   *
   * @return null if one of them is lost
   */
  static String identityOf(DamagedFile file) throws IOException {
    DamagedTables tables = new DamagedTables(file);
    tables.followAll(IDENTITY::equals);
    for (Object[] row : tables.rowsOf(IDENTITY)) {
      if (row.length == 1 && row[0] instanceof String log) {
        return log;
      }
    }
    return null;
  }

  /** Follows every table. */
  static DamagedTables in(DamagedFile file) throws IOException {
    DamagedTables tables = new DamagedTables(file);
    tables.followAll(name -> true);
    tables.followFreePages();
    tables.collectLeftOver();
    return tables;
  }

  private void followAll(Predicate<String> which) throws IOException {
    List<Integer> schema = new ArrayList<>();
    schemaWhole = follow(SCHEMA_ROOT, schema, true) && file.isHeaderSound();
    for (int page : schema) {
      BtreePage parsed = BtreePage.of(file.page(page), page);
      for (Cell cell : parsed.cells()) {
        followEntry(decode(parsed, cell), which);
      }
    }
  }

  /** An entry of the table of tables: type, name, table, root, statement. */
  private void followEntry(Object[] entry, Predicate<String> which) throws IOException {
    if (entry == null
        || entry.length != 5
        || !(entry[1] instanceof String name)
        || !(entry[3] instanceof Long root)) {
      schemaWhole = false;
      return;
    }
    if (root == 0 || !which.test(name)) {
      return;
    }
    List<Integer> rows = new ArrayList<>();
    boolean whole = follow(root.intValue(), rows, "table".equals(entry[0]));
    if ("table".equals(entry[0])) {
      pages.put(name, rows);
      if (!whole) {
        cut.add(name);
      }
    }
  }

  /**
   * Walks one tree.
   *
   * @param rows gets the pages that hold rows, in the order of their keys
   * @param counts false for an index, which can be made again: what is lost of it is no loss
   * @return false if a page of it is not whole
   */
  private boolean follow(int number, List<Integer> rows, boolean counts) throws IOException {
    if (number < 1 || number > file.pages() || seen.get(number)) {
      return false;
    }
    seen.set(number);
    BtreePage page = BtreePage.of(file.page(number), number);
    if (page == null) {
      lostPages += counts ? 1 : 0;
      return false;
    }
    boolean whole = true;
    if (page.kind().isInterior()) {
      for (Cell cell : page.cells()) {
        whole &= follow(cell.child(), rows, counts);
      }
      whole &= follow(page.rightChild(), rows, counts);
    }
    if (page.holdsRows()) {
      rows.add(number);
    }
    return whole;
  }

  /** Free pages keep what was once on them: none of that is a row any more. */
  private void followFreePages() throws IOException {
    int trunk = file.isHeaderSound() ? file.page(1).getInt(32) : 0;
    while (trunk > 0 && trunk <= file.pages() && !seen.get(trunk)) {
      seen.set(trunk);
      int count = file.page(trunk).getInt(4);
      for (int i = 0; i < count && 8 + 4 * i < file.pageSize(); i++) {
        int free = file.page(trunk).getInt(8 + 4 * i);
        if (free > 0 && free <= file.pages()) {
          seen.set(free);
        }
      }
      trunk = file.page(trunk).getInt(0);
    }
  }

  private void collectLeftOver() throws IOException {
    if (schemaWhole && cut.isEmpty()) {
      return;
    }
    for (int number = 1; number <= file.pages(); number++) {
      if (!seen.get(number)) {
        BtreePage page = BtreePage.of(file.page(number), number);
        if (page != null && page.holdsRows()) {
          leftOver.add(number);
        }
      }
    }
  }

  /** The row of an entry, with what lies on further pages; null if it is not whole. */
  Object[] decode(BtreePage page, Cell cell) throws IOException {
    if (cell.payloadBytes() > LONGEST_ROW_BYTES) {
      return null;
    }
    byte[] payload = new byte[(int) cell.payloadBytes()];
    page.bytes().get(cell.payloadPlace(), payload, 0, cell.localBytes());
    int filled = cell.localBytes();
    int next = cell.overflowPage();
    while (filled < payload.length) {
      if (next < 2 || next > file.pages()) {
        return null;
      }
      var more = file.page(next);
      int part = Math.min(payload.length - filled, file.pageSize() - 4);
      more.get(4, payload, filled, part);
      filled += part;
      next = more.getInt(0);
    }
    // The last page of a row leads nowhere; noise would.
    return cell.overflowPage() != 0 && next != 0 ? null : RecordFormat.decode(payload);
  }

  /** Pages that hold rows of a table, as far as the way to them is whole. */
  List<Integer> pagesOf(String table) {
    return pages.getOrDefault(table, List.of());
  }

  /** Pages with rows that no table leads to. */
  List<Integer> leftOver() {
    return leftOver;
  }

  /** True if rows of this table may be on the pages that are left over. */
  boolean mayHaveLeftOver(String table) {
    return !schemaWhole || cut.contains(table);
  }

  /** Pages of tables that could not be read. */
  int lostPages() {
    return lostPages;
  }

  private Map<String, Long> sequence() throws IOException {
    if (mayHaveLeftOver(SEQUENCE) || !pages.containsKey(SEQUENCE)) {
      return null;
    }
    Map<String, Long> sequence = new HashMap<>();
    for (Object[] row : rowsOf(SEQUENCE)) {
      if (row.length == 2 && row[0] instanceof String table && row[1] instanceof Long last) {
        sequence.put(table, last);
      }
    }
    return sequence;
  }

  /** Rows of a small table that are whole. */
  private List<Object[]> rowsOf(String table) throws IOException {
    List<Object[]> rows = new ArrayList<>();
    for (int number : pagesOf(table)) {
      BtreePage page = BtreePage.of(file.page(number), number);
      for (Cell cell : page.cells()) {
        Object[] row = decode(page, cell);
        if (row != null) {
          rows.add(row);
        }
      }
    }
    return rows;
  }
}
