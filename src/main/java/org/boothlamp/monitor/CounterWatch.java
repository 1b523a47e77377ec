package org.boothlamp.monitor;

/**
 * Turns a counter that grows into events: one for each spell of growth, told when it has stood
 * still for a second. A damaged line would otherwise fill the log with one event a frame. Confined
 * to one thread.
 */
final class CounterWatch {

  private static final long QUIET_NANOS = 1_000_000_000L;

  private final EventKind event;
  private long told;
  private long seen;
  private long startNanos;
  private long lastNanos;

  CounterWatch(EventKind event) {
    this.event = event;
  }

  /**
   * Looks at the counter.
   *
   * @return true if a spell is over and {@code entry} was filled with it
   */
  boolean look(long count, long nanos, LogEntry entry) {
    if (count != seen) {
      if (seen == told) {
        startNanos = nanos;
      }
      seen = count;
      lastNanos = nanos;
    }
    return seen != told && nanos - lastNanos >= QUIET_NANOS && fill(entry);
  }

  /** Ends a spell early; true if there was one. */
  boolean finish(LogEntry entry) {
    return seen != told && fill(entry);
  }

  private boolean fill(LogEntry entry) {
    entry.kind = LogEntry.Kind.EVENT_ENDED;
    entry.event = event;
    entry.monotonicNanos = startNanos;
    entry.lengthSeconds = (lastNanos - startNanos) / 1e9;
    entry.count = seen - told;
    told = seen;
    return true;
  }
}
