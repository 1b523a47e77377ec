package org.boothlamp.monitor;

/** Monotonic time, for lengths of time only. */
@FunctionalInterface
public interface NanoClock {

  /** The machine's own monotonic clock. */
  NanoClock SYSTEM = System::nanoTime;

  /** Nanoseconds since an arbitrary but fixed moment of this run. */
  long nanoTime();
}
