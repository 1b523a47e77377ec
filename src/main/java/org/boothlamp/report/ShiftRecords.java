package org.boothlamp.report;

import java.util.List;

/**
 * All that the log holds for a span of time, each list in order of time. Immutable.
 *
 * @param runs segments
 * @param touches contacts that did not become segments
 * @param events everything else
 */
public record ShiftRecords(
    List<RunRecord> runs, List<TouchRecord> touches, List<EventRecord> events) {

  public ShiftRecords {
    runs = List.copyOf(runs);
    touches = List.copyOf(touches);
    events = List.copyOf(events);
  }
}
