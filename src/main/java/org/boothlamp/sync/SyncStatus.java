package org.boothlamp.sync;

import java.util.List;

/**
 * How far rows have been sent. Immutable.
 *
 * @param target where to
 * @param backlog rows not sent yet, by table
 * @param setAside rows that the target refuses
 * @param lastSuccessWallMillis when all rows had last been sent, ms since the epoch; 0 for never
 * @param lastFailureWallMillis when a try last failed; 0 for never
 * @param failure what is wrong now; empty if the last try worked
 * @param nextMove what to do about it; may be empty
 */
public record SyncStatus(
    String target,
    List<Backlog> backlog,
    List<SetAside> setAside,
    long lastSuccessWallMillis,
    long lastFailureWallMillis,
    String failure,
    String nextMove) {

  /**
   * Rows of a table that are not sent yet.
   *
   * @param table the table
   * @param rows how many
   */
  public record Backlog(String table, long rows) {}

  /**
   * A row that the target refuses.
   *
   * @param table its table
   * @param id its number
   * @param reason what the target said
   */
  public record SetAside(String table, long id, String reason) {}

  public SyncStatus {
    backlog = List.copyOf(backlog);
    setAside = List.copyOf(setAside);
  }

  /** Rows not sent yet. */
  public long backlogRows() {
    return backlog.stream().mapToLong(Backlog::rows).sum();
  }
}
