package org.boothlamp.testing;

import java.util.ArrayList;
import java.util.List;
import org.boothlamp.monitor.BoothLogSink;
import org.boothlamp.monitor.LogEntry;

/** A log that keeps copies of everything it is offered. */
public final class EntryCollector implements BoothLogSink {

  private final List<LogEntry> entries = new ArrayList<>();

  @Override
  public boolean offer(LogEntry entry) {
    LogEntry copy = new LogEntry();
    copy.set(entry);
    entries.add(copy);
    return true;
  }

  /** Everything, in order. */
  public List<LogEntry> all() {
    return entries;
  }

  /** The entries of one kind, in order. */
  public List<LogEntry> of(LogEntry.Kind kind) {
    return entries.stream().filter(entry -> entry.kind == kind).toList();
  }
}
