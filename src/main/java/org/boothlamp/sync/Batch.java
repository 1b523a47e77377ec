package org.boothlamp.sync;

import java.util.List;
import org.boothlamp.boothlog.RowGroup;

/**
 * Rows of one table that are sent together. Immutable.
 *
 * @param booth booth id
 * @param log identity of the booth's log
 * @param table name of the table
 * @param groups at least one, in the order of their numbers
 */
record Batch(String booth, String log, String table, List<RowGroup> groups) {

  Batch {
    groups = List.copyOf(groups);
  }

  long firstId() {
    return groups.get(0).id();
  }

  long lastId() {
    return groups.get(groups.size() - 1).id();
  }

  /** Rows of all tables. */
  int rows() {
    return groups.stream().mapToInt(group -> group.rows().size()).sum();
  }

  /** The first half and the rest; there must be more than one group. */
  List<Batch> halves() {
    int middle = groups.size() / 2;
    return List.of(
        new Batch(booth, log, table, groups.subList(0, middle)),
        new Batch(booth, log, table, groups.subList(middle, groups.size())));
  }
}
