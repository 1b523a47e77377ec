package org.boothlamp.sync;

import java.nio.file.Path;
import java.util.concurrent.locks.LockSupport;
import java.util.random.RandomGenerator;
import org.boothlamp.monitor.NanoClock;
import org.boothlamp.monitor.WallClock;
import org.boothlamp.monitor.Worker;
import org.tinylog.Logger;

/**
 * Sends what is new every so often while the monitor runs: one batch a step. Failures are said once
 * and then tried again ever more rarely; nothing of it ends the monitor. Confined to one thread.
 */
public final class SyncWorker implements Worker {

  private static final long IDLE_NANOS = 200_000_000L;

  private final Path boothLog;
  private final String booth;
  private final Destination destination;
  private final long everyNanos;
  private final NanoClock clock;
  private final WallClock wallClock;
  private final Backoff backoff;
  private final Runnable idle;
  private SyncLock lock;
  private Syncer syncer;
  private long dueNanos;
  private String saidFailure = "";

  /**
   * A worker that has sent nothing yet.
   *
   * @param boothLog the log's file
   * @param booth booth id
   * @param everySeconds pause after everything has been sent
   * @param random for the pauses after failures
   */
  public SyncWorker(
      Path boothLog, String booth, SyncTarget target, double everySeconds, RandomGenerator random) {
    this(
        boothLog,
        booth,
        Destinations.of(target),
        everySeconds,
        new Backoff(random),
        NanoClock.SYSTEM,
        () -> LockSupport.parkNanos(IDLE_NANOS));
  }

  SyncWorker(
      Path boothLog,
      String booth,
      Destination destination,
      double everySeconds,
      Backoff backoff,
      NanoClock clock,
      Runnable idle) {
    this.boothLog = boothLog;
    this.booth = booth;
    this.destination = destination;
    this.everyNanos = Math.round(everySeconds * 1e9);
    this.backoff = backoff;
    this.clock = clock;
    this.idle = idle;
    wallClock = WallClock.SYSTEM;
    dueNanos = clock.nanoTime();
  }

  @Override
  public String roleName() {
    return "sync";
  }

  @Override
  public boolean step() {
    if (clock.nanoTime() - dueNanos < 0) {
      idle.run();
      return true;
    }
    try {
      sendSome();
    } catch (SyncException failure) {
      fail(failure);
    } catch (RuntimeException failure) {
      fail(SyncException.later("rows are not sent (" + failure.getMessage() + ")", "", failure));
    }
    return true;
  }

  private void sendSome() throws SyncException {
    if (syncer == null && !begin()) {
      dueNanos = clock.nanoTime() + IDLE_NANOS;
      return;
    }
    if (syncer.sendNext() == 0) {
      succeed();
      end();
      dueNanos = clock.nanoTime() + everyNanos;
    }
  }

  /** False while another process sends the rows of this log. */
  private boolean begin() throws SyncException {
    lock = SyncLock.tryTake(boothLog);
    if (lock == null) {
      return false;
    }
    syncer = Syncer.open(boothLog, booth, destination, wallClock);
    return true;
  }

  private void succeed() {
    backoff.reset();
    if (!saidFailure.isEmpty()) {
      Logger.info("sync: {} takes rows again", destination.target().name());
      saidFailure = "";
    }
    if (syncer.setAside() > 0) {
      Logger.warn(
          "sync: {} rows are refused and set aside: boothlamp sync --status", syncer.setAside());
    }
  }

  private void fail(SyncException failure) {
    if (!saidFailure.equals(failure.what())) {
      Logger.warn("sync: {}, trying again", failure.getMessage());
      saidFailure = failure.what();
    }
    dueNanos = clock.nanoTime() + backoff.next();
    end();
  }

  private void end() {
    attempt(syncer);
    attempt(lock);
    syncer = null;
    lock = null;
  }

  private static void attempt(AutoCloseable part) {
    if (part == null) {
      return;
    }
    try {
      part.close();
    } catch (Exception failure) {
      Logger.warn("sync: a round did not end in order: {}", failure.getMessage());
    }
  }

  @Override
  public void close() {
    end();
    destination.close();
  }
}
