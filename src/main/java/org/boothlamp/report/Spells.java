package org.boothlamp.report;

import java.util.Comparator;
import java.util.List;

/**
 * Events of one kind as stretches of the time of day, to ask which runs they fell into. The booth's
 * seconds begin anew at every start of the monitor, so they cannot tell two starts apart. One look
 * costs a binary search. Immutable.
 */
final class Spells {

  private final double[] startMillis;

  /** Latest end among this spell and all before it. */
  private final double[] latestEndMillis;

  private Spells(List<EventRecord> events) {
    startMillis = new double[events.size()];
    latestEndMillis = new double[events.size()];
    double latest = Double.NEGATIVE_INFINITY;
    for (int i = 0; i < events.size(); i++) {
      startMillis[i] = events.get(i).startWallMillis();
      latest = Math.max(latest, startMillis[i] + knownMillis(events.get(i).lengthSeconds()));
      latestEndMillis[i] = latest;
    }
  }

  /** The spells of the events with this word. */
  static Spells of(String what, List<EventRecord> events) {
    return new Spells(
        events.stream()
            .filter(event -> event.what().equals(what))
            .sorted(Comparator.comparingLong(EventRecord::startWallMillis))
            .toList());
  }

  /** An event whose end was never seen counts as a moment. */
  private static double knownMillis(double seconds) {
    return Double.isNaN(seconds) ? 0 : 1_000 * seconds;
  }

  /** True if a spell shares a moment with the run. */
  boolean overlap(RunRecord run) {
    int last = lastStartingUntil(run.startWallMillis() + 1_000 * run.lengthSeconds());
    return last >= 0 && latestEndMillis[last] >= run.startWallMillis();
  }

  private int lastStartingUntil(double millis) {
    int low = 0;
    int high = startMillis.length;
    while (low < high) {
      int middle = (low + high) >>> 1;
      if (startMillis[middle] <= millis) {
        low = middle + 1;
      } else {
        high = middle;
      }
    }
    return low - 1;
  }
}
