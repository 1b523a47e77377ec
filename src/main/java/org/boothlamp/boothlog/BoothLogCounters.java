package org.boothlamp.boothlog;

/**
 * What the log's writer says of itself, counted since its start. Written by the writer's thread
 * only; other threads may read a slightly old value.
 */
public final class BoothLogCounters {

  /** Transactions that succeeded. */
  public volatile long commits;

  /** Transactions that failed and were, or will be, tried again. */
  public volatile long failedCommits;

  /** Rows written. */
  public volatile long rows;

  /** Rows that could never be written and were left out. */
  public volatile long refusedRows;

  /** Rows of traces that were given up because neither disk nor memory had room for them. */
  public volatile long givenUpTraceRows;

  /** Why nothing can be written at the moment, in words; null if it can. */
  public volatile String trouble;

  /** Entries from the queue that belong to no segment, or could not be understood. */
  public volatile long strayEntries;

  /** Longest commit, ns. */
  public volatile long slowestCommitNanos;
}
