package org.boothlamp.cli;

import org.boothlamp.monitor.MonitorStatus;

/**
 * A booth monitor with all its threads. Started once; safe to share.
 *
 * <p>Closing ends its parts against the order of their start and may be called more than once, from
 * any thread.
 */
public interface RunningBooth extends AutoCloseable {

  /** Starts every part. */
  void start();

  /** Lets the booth close in order when the Java machine is asked to end; before {@link #start}. */
  void closeOnShutdown();

  /** Waits until the source has ended or a part has failed. */
  void awaitEnd() throws InterruptedException;

  /** True until the source has ended or a part has failed. */
  boolean isRunning();

  /** What ended the booth early, or null. */
  Throwable failure();

  /** What the monitor sees now. */
  MonitorStatus status();

  /** Why the booth log cannot be written now, in words; null if it can. */
  String logTrouble();

  /** Time of day by the booth's own clock, ms since the epoch. */
  long wallMillis();

  @Override
  void close();
}
