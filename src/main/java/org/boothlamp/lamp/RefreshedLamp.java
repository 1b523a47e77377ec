package org.boothlamp.lamp;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.locks.LockSupport;
import java.util.function.LongConsumer;
import org.boothlamp.judging.Signal;
import org.boothlamp.monitor.Lamp;
import org.boothlamp.monitor.NanoClock;
import org.boothlamp.monitor.Worker;
import org.boothlamp.monitor.WorkerThread;
import org.tinylog.Logger;

/**
 * A lamp on any number of outputs, each refreshed by a thread of its own: a screen or disk that
 * makes its thread wait does not hold up the pins.
 *
 * <pre>
 *   show() -> ring of shown signals -> thread "lamp"   -> pins
 *         \-> ring of shown signals -> thread "lamp-2" -> trace file
 * </pre>
 *
 * <p>A change reaches a working output at once, in order. If nothing is shown for 0.5 s, each
 * thread shows fault by itself. {@link #show} belongs to one thread at a time; the rest is safe to
 * share.
 */
public final class RefreshedLamp implements Lamp {

  private final List<LampRefresher> refreshers = new ArrayList<>();
  private final List<WorkerThread> threads = new ArrayList<>();
  private boolean started;
  private boolean closed;

  /**
   * A lamp that is dark until {@link #start}.
   *
   * @param outputs where to show; closed with the lamp
   * @param pattern which lights a signal has
   * @param clock time of the pattern and of the wait for {@link #show}
   */
  public RefreshedLamp(List<LampOutput> outputs, LampPattern pattern, NanoClock clock) {
    this(outputs, pattern, clock, LockSupport::parkNanos);
  }

  RefreshedLamp(List<LampOutput> outputs, LampPattern pattern, NanoClock clock, LongConsumer park) {
    for (LampOutput output : outputs) {
      String roleName = refreshers.isEmpty() ? "lamp" : "lamp-" + (refreshers.size() + 1);
      LampRefresher refresher = new LampRefresher(roleName, output, pattern, clock, park);
      refreshers.add(refresher);
      threads.add(new WorkerThread(refresher, RefreshedLamp::onThreadEnded));
    }
  }

  private static void onThreadEnded(Throwable thrown) {
    Logger.error(thrown, "lamp: a thread ended, its lamp is no longer driven; restart the monitor");
  }

  /** Starts the threads; once. */
  public synchronized void start() {
    started = true;
    threads.forEach(WorkerThread::start);
  }

  /** The refreshers, for a test that turns them by hand instead of starting threads. */
  List<Worker> workers() {
    return List.copyOf(refreshers);
  }

  @Override
  public void show(Signal signal, long monotonicNanos) {
    for (int k = 0; k < refreshers.size(); k++) {
      refreshers.get(k).show(signal, monotonicNanos);
    }
  }

  /** Failures of all outputs so far. */
  public long failures() {
    return refreshers.stream().mapToLong(LampRefresher::failures).sum();
  }

  /** Shown signals that an output missed because it was held up for seconds. */
  public long skipped() {
    return refreshers.stream().mapToLong(LampRefresher::skipped).sum();
  }

  /** Leaves every output dark and waits for that up to 5 s an output. */
  @Override
  public synchronized void close() {
    if (closed) {
      return;
    }
    closed = true;
    refreshers.forEach(LampRefresher::end);
    for (int k = 0; k < refreshers.size(); k++) {
      close(refreshers.get(k), threads.get(k));
    }
  }

  private void close(LampRefresher refresher, WorkerThread thread) {
    if (!started) {
      refresher.close();
      return;
    }
    thread.close();
    if (thread.isAlive()) {
      Logger.warn(
          "lamp: {} is held up and did not close; look at the lamp, and switch it off by hand",
          refresher.outputName());
    }
  }
}
