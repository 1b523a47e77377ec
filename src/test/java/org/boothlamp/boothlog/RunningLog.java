package org.boothlamp.boothlog;

import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.function.BooleanSupplier;
import org.boothlamp.monitor.WorkerThread;
import org.boothlamp.report.ShiftRecords;

/** A writer on a thread of its own with real clocks, as in the daemon. */
final class RunningLog implements AutoCloseable {

  final LogQueue queue = new LogQueue();
  final List<SignIn> signIns = new CopyOnWriteArrayList<>();
  final List<Throwable> errors = new CopyOnWriteArrayList<>();
  final BoothLogWriter writer;
  private final Path path;
  private final WorkerThread thread;

  RunningLog(Path path) {
    this.path = path;
    writer =
        new BoothLogWriter(
            BoothLog.openPatiently(path), "booth-3", queue, LogClocks.system(), signIns::add);
    thread = new WorkerThread(writer, errors::add);
    thread.start();
  }

  ShiftRecords records() {
    try (BoothLogReader reader = BoothLogReader.open(path)) {
      return reader.read(0, Long.MAX_VALUE);
    }
  }

  LogCounts counts() {
    try (BoothLogReader reader = BoothLogReader.open(path)) {
      return reader.counts();
    }
  }

  /** Waits for something to become true; answers how long that took, s. */
  static double secondsUntil(BooleanSupplier condition, double longestSeconds)
      throws InterruptedException {
    long begun = System.nanoTime();
    while (!condition.getAsBoolean()) {
      if ((System.nanoTime() - begun) / 1e9 > longestSeconds) {
        throw new AssertionError("not true within " + longestSeconds + " s");
      }
      Thread.sleep(5);
    }
    return (System.nanoTime() - begun) / 1e9;
  }

  @Override
  public void close() {
    thread.close();
  }
}
