package org.boothlamp.boothlog;

import org.boothlamp.monitor.EventKind;

/**
 * Tells of entries lost because the queue was full, once for a spell of losses. Confined to one
 * thread.
 */
final class LossWatch {

  private final LogQueue queue;
  private long told;
  private long seen;
  private Moment begun;

  LossWatch(LogQueue queue) {
    this.queue = queue;
  }

  /** Looks once; an event follows as soon as no more were lost since the look before. */
  void look(LogClocks clocks, EntrySorter sorter) {
    long lost = queue.lostEntries();
    if (lost == told) {
      return;
    }
    if (begun == null) {
      begun = clocks.now();
    }
    if (lost == seen) {
      tell(clocks, sorter);
    }
    seen = lost;
  }

  /** Tells of what is not told yet. */
  void finish(LogClocks clocks, EntrySorter sorter) {
    look(clocks, sorter);
    look(clocks, sorter);
  }

  private void tell(LogClocks clocks, EntrySorter sorter) {
    sorter.addEvent(
        EventKind.LOG_QUEUE_FULL, begun, begun.secondsUntil(clocks.now()), seen - told, "");
    told = seen;
    begun = null;
  }
}
