package org.boothlamp.testing;

import java.util.concurrent.atomic.AtomicLong;
import org.boothlamp.monitor.NanoClock;

/** A monotonic clock that moves only when a test turns it. Safe to share. */
public final class HandTurnedClock implements NanoClock {

  private static final long NANOS_PER_MILLI = 1_000_000L;

  private final AtomicLong nanos;

  /** A clock that starts where no test should rely on it. */
  public HandTurnedClock() {
    this(-5_000_000_000L);
  }

  /** A clock that starts at {@code startNanos}. */
  public HandTurnedClock(long startNanos) {
    nanos = new AtomicLong(startNanos);
  }

  @Override
  public long nanoTime() {
    return nanos.get();
  }

  /** Moves the clock on. */
  public void advanceNanos(long byNanos) {
    nanos.addAndGet(byNanos);
  }

  /** Moves the clock on. */
  public void advanceMillis(long byMillis) {
    advanceNanos(byMillis * NANOS_PER_MILLI);
  }
}
