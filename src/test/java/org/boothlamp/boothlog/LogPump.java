package org.boothlamp.boothlog;

import static org.boothlamp.testing.LogEntries.ended;
import static org.boothlamp.testing.LogEntries.point;
import static org.boothlamp.testing.LogEntries.progress;
import static org.boothlamp.testing.LogEntries.started;

import org.boothlamp.monitor.LogEntry;
import org.boothlamp.monitor.SegmentEnd;

/**
 * Welds segment after segment in real time, a trace point every 0.05 s and figures every second, as
 * the sampler would.
 */
final class LogPump {

  private static final int PROGRESS_POINTS = LogEntry.TRACE_HZ;

  private final LogQueue queue;
  private final int[] segmentPoints;
  private double startSeconds;
  private int points;
  private int finished;
  private long refused;
  private long slowestOfferNanos;

  /** A pump whose segments have the given numbers of points, in turn. */
  LogPump(LogQueue queue, int... segmentPoints) {
    this.queue = queue;
    this.segmentPoints = segmentPoints;
  }

  /** The next 0.05 s. */
  void tick() {
    if (points == 0) {
      offer(started(startSeconds, "T17"));
    }
    offer(point(startSeconds + runningSeconds()));
    points++;
    if (points == segmentPoints[finished % segmentPoints.length]) {
      end();
    } else if (points % PROGRESS_POINTS == 0) {
      offer(progress(startSeconds, runningSeconds()));
    }
  }

  private void end() {
    offer(ended(startSeconds, runningSeconds(), SegmentEnd.ARC_OFF));
    startSeconds += runningSeconds() + 1;
    points = 0;
    finished++;
  }

  private void offer(LogEntry entry) {
    long before = System.nanoTime();
    if (!queue.offer(entry)) {
      refused++;
    }
    slowestOfferNanos = Math.max(slowestOfferNanos, System.nanoTime() - before);
  }

  /** Length of the running segment so far; 0 between two. */
  double runningSeconds() {
    return (double) points / LogEntry.TRACE_HZ;
  }

  /** Segments that have ended. */
  int finished() {
    return finished;
  }

  /** Entries that the queue did not take. */
  long refused() {
    return refused;
  }

  /** Longest offer, ms. */
  double slowestOfferMillis() {
    return slowestOfferNanos / 1e6;
  }

  /** Ticks in real time for a while. */
  void runFor(double seconds) throws InterruptedException {
    long begun = System.nanoTime();
    int ticks = (int) Math.round(seconds * LogEntry.TRACE_HZ);
    for (int tick = 1; tick <= ticks; tick++) {
      tick();
      long dueMillis = tick * 1_000L / LogEntry.TRACE_HZ;
      long leftMillis = dueMillis - (System.nanoTime() - begun) / 1_000_000;
      if (leftMillis > 0) {
        Thread.sleep(leftMillis);
      }
    }
  }
}
