package org.boothlamp.monitor;

/** Where the monitor puts what it found; the booth log's bounded queue is one. */
@FunctionalInterface
public interface BoothLogSink {

  /**
   * Offers one entry from the sampler's thread. Copies what it needs before it returns, for the
   * entry is filled again at once. Never waits and creates no objects.
   *
   * @return false if there was no room: the entry is lost, and the caller counts it
   */
  boolean offer(LogEntry entry);
}
