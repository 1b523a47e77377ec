package org.boothlamp.acquisition;

import java.util.concurrent.locks.LockSupport;

/** A way to let time pass; tests turn their clock's hands instead. */
@FunctionalInterface
public interface Pause {

  /** Waits for real. */
  Pause SYSTEM = LockSupport::parkNanos;

  /** Waits about this long, at least 0 ns; may wake early. */
  void pauseNanos(long nanos);
}
