package org.boothlamp.monitor;

/** Time of day, for labels only: it may jump, so never take a difference of it. */
@FunctionalInterface
public interface WallClock {

  /** The machine's own clock. */
  WallClock SYSTEM = System::currentTimeMillis;

  /** Milliseconds since 1970-01-01T00:00Z. */
  long epochMillis();
}
