package org.boothlamp.boothlog;

import java.util.concurrent.atomic.AtomicLong;
import org.boothlamp.monitor.BoothLogSink;
import org.boothlamp.monitor.LogEntry;

/**
 * The way from the sampler to the log's writer: a ring of entries that are made once and copied in
 * and out. A full ring answers false, and the entry is counted as lost; nobody ever waits.
 *
 * <p>About 0.4 kB an entry; at some 32 entries a second of arc the default ring holds two minutes.
 * One thread offers, one other polls; any thread may ask for the counts.
 */
public final class LogQueue implements BoothLogSink {

  /** Entries held unless said otherwise. */
  public static final int DEFAULT_CAPACITY = 4_096;

  private final LogEntry[] cells;
  // How many were put in and taken out since the start; each is written by one thread only.
  private final AtomicLong offered = new AtomicLong();
  private final AtomicLong polled = new AtomicLong();
  private final AtomicLong lost = new AtomicLong();

  /** A queue of {@link #DEFAULT_CAPACITY} entries. */
  public LogQueue() {
    this(DEFAULT_CAPACITY);
  }

  /** A queue of {@code capacity} entries, at least 1. */
  public LogQueue(int capacity) {
    if (capacity < 1) {
      throw new IllegalArgumentException("capacity must be at least 1: capacity=" + capacity);
    }
    cells = new LogEntry[capacity];
    for (int i = 0; i < capacity; i++) {
      cells[i] = new LogEntry();
    }
  }

  @Override
  public boolean offer(LogEntry entry) {
    long number = offered.getPlain();
    if (number - polled.getAcquire() == cells.length) {
      lost.setRelease(lost.getPlain() + 1);
      return false;
    }
    cells[(int) (number % cells.length)].set(entry);
    offered.setRelease(number + 1);
    return true;
  }

  /**
   * Takes the oldest entry out.
   *
   * @param into becomes a copy of it
   * @return false if the queue was empty; {@code into} is then as before
   */
  public boolean poll(LogEntry into) {
    long number = polled.getPlain();
    if (number == offered.getAcquire()) {
      return false;
    }
    into.set(cells[(int) (number % cells.length)]);
    polled.setRelease(number + 1);
    return true;
  }

  /** Entries waiting now. */
  public int size() {
    // In this order the difference cannot be negative; taken entries may make it too large.
    long taken = polled.getAcquire();
    return (int) Math.min(cells.length, offered.getAcquire() - taken);
  }

  /** Entries lost since the start because the queue was full. */
  public long lostEntries() {
    return lost.getAcquire();
  }
}
