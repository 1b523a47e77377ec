package org.boothlamp.app;

import java.util.concurrent.locks.LockSupport;
import org.boothlamp.monitor.BoothLogSink;
import org.boothlamp.monitor.LogEntry;

/**
 * Waits while the log's queue is full instead of losing the entry. Only for sources that do not run
 * in real time and can be kept waiting; nothing live may ever stand behind it.
 */
final class PatientSink implements BoothLogSink {

  private static final long PAUSE_NANOS = 1_000_000L;
  private static final int MOST_PAUSES = 30_000;

  private final BoothLogSink sink;

  PatientSink(BoothLogSink sink) {
    this.sink = sink;
  }

  @Override
  public boolean offer(LogEntry entry) {
    for (int pause = 0; pause < MOST_PAUSES; pause++) {
      if (sink.offer(entry)) {
        return true;
      }
      LockSupport.parkNanos(PAUSE_NANOS);
    }
    return false;
  }
}
