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
  private boolean full;
  private boolean notReady;
  private long givenUpBefore;

  /** A commit is about to be tried. */
  void onTry(Moment now) {
    if (begun == null) {
      begun = now;
    }
  }

  /** There is no file to write to. */
  void onNotReady(Moment now) {
    onTry(now);
    notReady = true;
  }

  /** It failed. Says so once; the rest is counted. */
  void onFailure(BoothLog log, Exception failure) {
    full |= SqliteCodes.isFull(failure);
    if (failures++ == 0) {
      Logger.warn("booth log {}: not written, trying again: {}", log.path(), failure.getMessage());
    }
  }

  /**
   * It succeeded.
   *
   * @param givenUp rows of traces given up since the start
   */
  void onSuccess(BoothLog log, Moment now, EntrySorter sorter, long givenUp) {
    double seconds = begun.secondsUntil(now);
    if (seconds >= SHORTEST_STALL_SECONDS) {
      EventKind kind = full ? EventKind.DISK_FULL : EventKind.LOG_STALLED;
      sorter.addEvent(kind, begun, seconds, failures, detail(givenUp - givenUpBefore));
      Logger.warn("booth log {}: written again after {} s", log.path(), seconds);
    }
    begun = null;
    failures = 0;
    full = false;
    notReady = false;
    givenUpBefore = givenUp;
  }

  private String detail(long givenUp) {
    String what = what();
    return givenUp == 0 ? what : what + "; pieces of traces given up: " + givenUp;
  }

  private String what() {
    if (failures > 0) {
      return "tries that failed: " + failures;
    }
    return notReady ? "the file could not be opened" : "the disk was slow";
  }
}
