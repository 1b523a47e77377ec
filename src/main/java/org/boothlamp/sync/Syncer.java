package org.boothlamp.sync;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.boothlamp.boothlog.LogRows;
import org.boothlamp.boothlog.RowGroup;
import org.boothlamp.boothlog.RowReading;
import org.boothlamp.monitor.WallClock;

/**
 * Sends what a log holds and the target has not: batch by batch, and moves the mark of a table when
 * the target has committed.
 *
 * <pre>
 *  booth.db --LogRows--&gt; batch --&gt; Destination      rows that are final, after the mark
 *                          |            | committed
 *                          |            v
 *                          |        SyncState         mark moves
 *                          | one row refused: halves, until that row alone is set aside
 * </pre>
 *
 * <p>Confined to one thread at a time.
 */
public final class Syncer implements AutoCloseable {

  /** Rows with a number of their own in one batch, at most. */
  private static final int MOST_GROUPS = 1_000;

  /** No further row joins a batch of this size. */
  private static final long ENOUGH_BYTES = 1 << 20;

  private final LogRows log;
  private final String booth;
  private final Destination destination;
  private final SyncState state;
  private final WallClock clock;
  private int setAside;

  private Syncer(
      LogRows log, String booth, Destination destination, SyncState state, WallClock clock) {
    this.log = log;
    this.booth = booth;
    this.destination = destination;
    this.state = state;
    this.clock = clock;
  }

  /**
   * A syncer from a log to a target; connects to nothing yet.
   *
   * @param boothLog the log's file
   * @param booth booth id
   */
  public static Syncer open(Path boothLog, String booth, SyncTarget target, WallClock clock)
      throws SyncException {
    return open(boothLog, booth, Destinations.of(target), clock);
  }

  static Syncer open(Path boothLog, String booth, Destination destination, WallClock clock)
      throws SyncException {
    LogRows log = LogRows.open(boothLog);
    try {
      SyncState state = SyncState.open(boothLog, destination.target(), log.identity());
      return new Syncer(log, booth, destination, state, clock);
    } catch (SyncException | RuntimeException failure) {
      log.close();
      throw failure;
    }
  }

  /**
   * Sends one batch.
   *
   * @return rows with a number of their own that were dealt with; 0 if nothing is left to send
   * @throws SyncException if the target did not take it; noted in the state as well
   */
  public int sendNext() throws SyncException {
    try {
      destination.open();
      for (String table : LogRows.tables()) {
        int sent = sendPassedOver(table) + sendNew(table);
        if (sent > 0) {
          return sent;
        }
      }
      state.succeeded(clock.epochMillis());
      return 0;
    } catch (SyncException failure) {
      destination.close();
      state.failed(failure, clock.epochMillis());
      throw failure;
    }
  }

  private int sendNew(String table) throws SyncException {
    return LogRows.isInOrder(table) ? sendAfterMark(table) : sendUnsent(table);
  }

  /** Rows that come in any order are few: each is looked for by its number. */
  private int sendUnsent(String table) throws SyncException {
    List<Long> unsent = unsent(table);
    for (long id : unsent) {
      send(batch(table, log.one(table, id).groups()), false);
      state.noteSent(table, id);
    }
    return unsent.size();
  }

  private List<Long> unsent(String table) throws SyncException {
    List<Long> unsent = new ArrayList<>(log.numbers(table));
    unsent.removeAll(state.sent(table));
    return unsent;
  }

  private int sendAfterMark(String table) throws SyncException {
    long mark = state.mark(table);
    RowReading reading = log.next(table, mark, MOST_GROUPS, ENOUGH_BYTES);
    for (long id : reading.notFinal()) {
      state.passOver(table, id);
    }
    if (!reading.groups().isEmpty()) {
      send(batch(table, reading.groups()), true);
    }
    if (reading.lastId() > mark) {
      state.moveMark(table, reading.lastId());
    }
    return reading.groups().size();
  }

  private int sendPassedOver(String table) throws SyncException {
    int sent = 0;
    for (long id : state.passedOver(table)) {
      RowReading reading = log.one(table, id);
      if (!reading.groups().isEmpty()) {
        send(batch(table, reading.groups()), false);
        sent++;
      }
      if (reading.notFinal().isEmpty()) {
        state.forgetPassedOver(table, id);
      }
    }
    return sent;
  }

  private Batch batch(String table, List<RowGroup> groups) {
    return new Batch(booth, log.identity(), table, groups);
  }

  /** Halves a batch that holds a refused row, until that row stands alone. */
  private void send(Batch batch, boolean marked) throws SyncException {
    try {
      destination.send(batch);
    } catch (SyncException failure) {
      if (failure.kind() != SyncException.Kind.ROW) {
        throw failure;
      }
      if (batch.groups().size() == 1) {
        setAside++;
        state.setAside(batch.table(), batch.firstId(), failure.what(), clock.epochMillis());
      } else {
        for (Batch half : batch.halves()) {
          send(half, marked);
        }
      }
    }
    if (marked) {
      state.moveMark(batch.table(), batch.lastId());
    }
  }

  /** Rows that were set aside by this syncer. */
  public int setAside() {
    return setAside;
  }

  /** Lets rows that were set aside be tried again; answers how many. */
  public int retrySetAside() throws SyncException {
    return state.retrySetAside();
  }

  /** How far rows have been sent; connects to nothing. */
  public SyncStatus status() throws SyncException {
    List<SyncStatus.Backlog> backlog = new ArrayList<>();
    for (String table : LogRows.tables()) {
      long rows =
          LogRows.isInOrder(table)
              ? log.countAfter(table, state.mark(table))
              : unsent(table).size();
      backlog.add(new SyncStatus.Backlog(table, rows + state.passedOver(table).size()));
    }
    return state.status(backlog);
  }

  /** Rows with a number of their own that are not sent yet. */
  public long backlogRows() throws SyncException {
    return status().backlogRows();
  }

  @Override
  public void close() throws SyncException {
    destination.close();
    try {
      state.close();
    } finally {
      log.close();
    }
  }
}
