package org.boothlamp.monitor;

/**
 * One long-running part of the monitor. {@link WorkerThread} calls {@link #start} once, {@link
 * #step} until it answers false or the thread is asked to stop, and {@link #close} in any case, all
 * from one thread; a test calls the steps by hand.
 */
public interface Worker {

  /** Name of the thread, for people. */
  String roleName();

  /** Gets ready on the worker's own thread. */
  default void start() {}

  /**
   * Does one piece of work; waits at most a fraction of a second.
   *
   * @return false if there is nothing left to do, ever
   */
  boolean step();

  /** Ends in order on the worker's own thread. */
  void close();
}
