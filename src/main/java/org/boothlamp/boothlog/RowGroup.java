package org.boothlamp.boothlog;

import java.util.List;

/**
 * A row and all rows that belong to it: sent together or not at all. Immutable.
 *
 * @param id row number of the first row
 * @param rows the row itself, then its children
 */
public record RowGroup(long id, List<StoredRow> rows) {

  public RowGroup {
    rows = List.copyOf(rows);
  }

  /** The row that the others belong to. */
  public StoredRow root() {
    return rows.get(0);
  }

  long bytes() {
    return rows.stream().mapToLong(StoredRow::bytes).sum();
  }
}
