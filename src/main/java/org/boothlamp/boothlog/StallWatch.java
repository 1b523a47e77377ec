package org.boothlamp.boothlog;

import org.boothlamp.monitor.EventKind;
import org.tinylog.Logger;

/**
 * Notices when rows could not be written for a while, whether a commit failed or only took long,
 * and tells of it when it is over. Confined to one thread.
 */
final class StallWatch {

  /** Shorter waits for the disk are ordinary, s. */
  private static final double SHORTEST_STALL_SECONDS = 1.0;

  private Moment begun;
  private long failures;

  /** A commit is about to be tried. */
  void onTry(Moment now) {
    if (begun == null) {
      begun = now;
    }
  }

  /** It failed. Says so once; the rest is counted. */
  void onFailure(BoothLog log, Exception failure) {
    if (failures++ == 0) {
      Logger.warn("booth log {}: not written, trying again: {}", log.path(), failure.getMessage());
    }
  }

  /** It succeeded. */
  void onSuccess(BoothLog log, Moment now, EntrySorter sorter) {
    double seconds = begun.secondsUntil(now);
    if (seconds >= SHORTEST_STALL_SECONDS) {
      sorter.addEvent(EventKind.LOG_STALLED, begun, seconds, failures, detail());
      Logger.warn("booth log {}: written again after {} s", log.path(), seconds);
    }
    begun = null;
    failures = 0;
  }

  private String detail() {
    return failures == 0 ? "the disk was slow" : "tries that failed: " + failures;
  }
}
