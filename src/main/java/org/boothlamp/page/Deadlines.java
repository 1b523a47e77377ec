package org.boothlamp.page;

import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.locks.LockSupport;
import org.boothlamp.monitor.NanoClock;
import org.boothlamp.monitor.Worker;

/**
 * Cuts off whoever makes a thread of the page wait too long. Reading and writing of the JDK's
 * server block without a limit; a thread that is interrupted in one closes that connection, and
 * that one only. Safe to share.
 */
final class Deadlines implements Worker {

  private static final long LOOK_NANOS = 50_000_000L;

  private final NanoClock clock;
  private final Set<Deadline> running = ConcurrentHashMap.newKeySet();

  Deadlines(NanoClock clock) {
    this.clock = clock;
  }

  /** The calling thread has so long from now; it must end it in any case. */
  Deadline begin(long nanos) {
    Deadline deadline = new Deadline(Thread.currentThread(), clock.nanoTime() + nanos);
    running.add(deadline);
    return deadline;
  }

  @Override
  public String roleName() {
    return "page-watch";
  }

  @Override
  public boolean step() {
    LockSupport.parkNanos(LOOK_NANOS);
    look();
    return true;
  }

  void look() {
    long now = clock.nanoTime();
    running.forEach(deadline -> deadline.look(now));
  }

  @Override
  public void close() {
    running.clear();
  }

  /** One piece of work of one thread. */
  final class Deadline implements AutoCloseable {

    private final Thread thread;
    private final long untilNanos;
    private boolean over;

    private Deadline(Thread thread, long untilNanos) {
      this.thread = thread;
      this.untilNanos = untilNanos;
    }

    private synchronized void look(long now) {
      if (!over && now - untilNanos > 0) {
        over = true;
        thread.interrupt();
      }
    }

    /** True if the time is up. */
    synchronized boolean isOver() {
      return over;
    }

    /** Ends it on its own thread; an interrupt that came is taken back, so it hits nothing else. */
    @Override
    public synchronized void close() {
      running.remove(this);
      if (over) {
        Thread.interrupted();
      }
      over = true;
    }
  }
}
