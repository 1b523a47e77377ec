package org.boothlamp.monitor;

import java.util.function.Consumer;

/**
 * Owns the thread of one {@link Worker}, named after its role. A throwable out of a step ends the
 * worker: it is handed to the error handler, once, and the worker is closed. Safe to share.
 */
public final class WorkerThread implements AutoCloseable {

  private static final long LONGEST_CLOSE_MILLIS = 5_000;

  private final Worker worker;
  private final Consumer<Throwable> onError;
  private final Thread thread;
  private volatile boolean stopping;

  /**
   * A thread, not started yet.
   *
   * @param worker what to run
   * @param onError told of what ended the worker early, on the worker's thread
   */
  public WorkerThread(Worker worker, Consumer<Throwable> onError) {
    this.worker = worker;
    this.onError = onError;
    thread = new Thread(this::run, worker.roleName());
  }

  /** Starts the thread. */
  public void start() {
    thread.start();
  }

  private void run() {
    try {
      worker.start();
      while (!stopping && worker.step()) {
        // the step is the work
      }
    } catch (Throwable thrown) {
      onError.accept(thrown);
    } finally {
      closeWorker();
    }
  }

  private void closeWorker() {
    try {
      worker.close();
    } catch (Throwable thrown) {
      onError.accept(thrown);
    }
  }

  /** True until the worker has ended and closed. */
  public boolean isAlive() {
    return thread.isAlive();
  }

  /** Waits for the worker to end by itself. */
  public void join() throws InterruptedException {
    thread.join();
  }

  /** Asks the worker to end after its step, and waits for it up to 5 s. */
  @Override
  public void close() {
    stopping = true;
    try {
      thread.join(LONGEST_CLOSE_MILLIS);
    } catch (InterruptedException interrupted) {
      Thread.currentThread().interrupt();
    }
  }
}
