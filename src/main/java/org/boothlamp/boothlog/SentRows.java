package org.boothlamp.boothlog;

import java.io.IOException;
import java.util.Set;

/** Which rows of the log have been sent on. Asked on the writer's thread. */
@FunctionalInterface
public interface SentRows {

  /** Rows are sent nowhere: none waits. */
  SentRows NOT_SENT_ON = table -> new Unsent(Long.MAX_VALUE, Set.of());

  /**
   * Rows of a table that wait to be sent.
   *
   * @param afterId all with a higher row number
   * @param others row numbers of those that wait among the lower ones
   */
  record Unsent(long afterId, Set<Long> others) {

    public Unsent {
      others = Set.copyOf(others);
    }

    boolean has(long id) {
      return id > afterId || others.contains(id);
    }
  }

  /**
   * What of a table waits.
   *
   * @throws IOException if that cannot be told
   */
  Unsent of(String table) throws IOException;
}
