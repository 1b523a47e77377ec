package org.boothlamp.report;

import java.util.List;

/**
 * One start of the monitor in which the clock was never set, with what the report says of it.
 * Immutable.
 *
 * @param number number of the start; a higher one was later
 * @param runs in the order they were welded in
 * @param touches likewise
 * @param events likewise
 */
public record UntimedSummary(
    long number, List<RunSummary> runs, List<TouchRecord> touches, List<EventRecord> events) {

  public UntimedSummary {
    runs = List.copyOf(runs);
    touches = List.copyOf(touches);
    events = List.copyOf(events);
  }
}
