package org.boothlamp.report;

import java.util.List;

/**
 * What is known of when each start of a monitor was. Starts are numbered in order: one whose clock
 * was never set was after all that is known of the timed start before it, and before the one after.
 * Immutable.
 *
 * @param starts of any number of logs, each log's in order of its numbers
 */
public record StartTimes(List<Start> starts) {

  /**
   * One start.
   *
   * @param log which log and booth it belongs to
   * @param number its number there
   * @param startedWallMillis time of day, ms since the epoch, as far as it is known
   * @param timed true if it is known
   * @param lastWallMillis latest time of day known of it, ms since the epoch
   */
  public record Start(
      String log, long number, long startedWallMillis, boolean timed, long lastWallMillis) {}

  public StartTimes {
    starts = List.copyOf(starts);
  }

  /** Starts whose clock was never set and that may have been in the span, in order. */
  public List<Start> untimedIn(long fromWallMillis, long untilWallMillis) {
    return starts.stream()
        .filter(start -> !start.timed() && mayBeIn(start, fromWallMillis, untilWallMillis))
        .toList();
  }

  private boolean mayBeIn(Start start, long from, long until) {
    Start before = null;
    Start after = null;
    for (Start other : starts) {
      if (other.timed() && other.log().equals(start.log())) {
        before = other.number() < start.number() ? other : before;
        after = after == null && other.number() > start.number() ? other : after;
      }
    }
    if (before == null && after == null) {
      // In a booth whose clock was never set at all, its own word is all there is.
      return start.startedWallMillis() >= from && start.startedWallMillis() < until;
    }
    return (before == null || before.lastWallMillis() < until)
        && (after == null || after.startedWallMillis() >= from);
  }
}
