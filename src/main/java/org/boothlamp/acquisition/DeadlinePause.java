package org.boothlamp.acquisition;

import java.util.concurrent.locks.LockSupport;

/**
 * Waits to a few microseconds: sleeps for most of the time and spins for the rest.
 *
 * <p>A sleep ends some 60 µs late: the kernel lets timers slip by 50 µs unless a thread is
 * real-time (timer slack, prctl(2)), and waking costs the rest. So it is ended that much earlier,
 * and a wait that is shorter spins. Safe to share.
 */
final class DeadlinePause implements Pause {

  private static final long SLEEP_OVERRUN_NANOS = 60_000L;
  private static final long SHORTEST_SLEEP_NANOS = 10_000L;

  @Override
  public void pauseNanos(long nanos) {
    long start = System.nanoTime();
    if (nanos >= SLEEP_OVERRUN_NANOS + SHORTEST_SLEEP_NANOS) {
      LockSupport.parkNanos(nanos - SLEEP_OVERRUN_NANOS);
    }
    while (System.nanoTime() - start < nanos) {
      Thread.onSpinWait();
    }
  }
}
