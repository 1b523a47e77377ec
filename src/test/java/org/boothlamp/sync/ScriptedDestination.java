package org.boothlamp.sync;

import java.nio.file.Path;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.boothlamp.boothlog.RowGroup;

/** Takes batches, and fails as it is told. */
final class ScriptedDestination implements Destination {

  final List<Batch> taken = new ArrayList<>();
  final Set<Long> refusedSegments = new HashSet<>();
  final Deque<SyncException> failures = new ArrayDeque<>();

  @Override
  public SyncTarget target() {
    return new FolderTarget(Path.of("/scripted"));
  }

  @Override
  public void open() {
    // always there
  }

  @Override
  public void send(Batch batch) throws SyncException {
    if (!failures.isEmpty()) {
      throw failures.pop();
    }
    for (RowGroup group : batch.groups()) {
      if (batch.table().equals("segment") && refusedSegments.contains(group.id())) {
        throw SyncException.row("no such thing here", null);
      }
    }
    taken.add(batch);
  }

  /** Numbers of the rows of a table that were taken, in order. */
  List<Long> ids(String table) {
    return taken.stream()
        .filter(batch -> batch.table().equals(table))
        .flatMap(batch -> batch.groups().stream())
        .map(RowGroup::id)
        .toList();
  }

  @Override
  public void close() {
    // nothing is kept open
  }
}
