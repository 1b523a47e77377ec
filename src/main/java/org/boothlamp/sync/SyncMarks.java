package org.boothlamp.sync;

import java.io.IOException;
import java.nio.file.Path;
import java.util.HashSet;
import java.util.Set;
import org.boothlamp.boothlog.LogRows;
import org.boothlamp.boothlog.SentRows;

/**
 * Tells the log's writer what has been sent. Whatever the target refuses counts as not sent. Opens
 * what it reads at each question. Confined to one thread.
 */
public final class SyncMarks implements SentRows {

  private final Path boothLog;
  private final SyncTarget target;

  public SyncMarks(Path boothLog, SyncTarget target) {
    this.boothLog = boothLog;
    this.target = target;
  }

  @Override
  public Unsent of(String table) throws IOException {
    try (LogRows log = LogRows.open(boothLog);
        SyncState state = SyncState.open(boothLog, target, log.identity())) {
      Set<Long> waiting = new HashSet<>(state.passedOver(table));
      waiting.addAll(state.setAside(table));
      return new Unsent(state.mark(table), waiting);
    } catch (SyncException failure) {
      throw new IOException("what was sent cannot be told: " + failure.getMessage(), failure);
    }
  }
}
