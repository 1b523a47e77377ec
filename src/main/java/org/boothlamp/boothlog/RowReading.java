package org.boothlamp.boothlog;

import java.util.List;

/**
 * Rows of one table that were read at one moment. Immutable.
 *
 * @param groups rows that are final, in the order of their numbers
 * @param notFinal numbers of rows that may still change: to be asked for again
 * @param lastId number of the last row looked at; every row up to it is in one of the lists, or
 *     gone
 */
public record RowReading(List<RowGroup> groups, List<Long> notFinal, long lastId) {

  public RowReading {
    groups = List.copyOf(groups);
    notFinal = List.copyOf(notFinal);
  }
}
