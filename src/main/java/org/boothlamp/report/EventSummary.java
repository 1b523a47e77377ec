package org.boothlamp.report;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * All events with the same word. Immutable.
 *
 * @param what the event's word
 * @param events in order of time, at least one
 */
public record EventSummary(String what, List<EventRecord> events) {

  public EventSummary {
    events = List.copyOf(events);
  }

  /** Events by their word, in order of the first. */
  static List<EventSummary> of(List<EventRecord> events) {
    Map<String, List<EventRecord>> byWord = new LinkedHashMap<>();
    for (EventRecord event : events) {
      byWord.computeIfAbsent(event.what(), word -> new ArrayList<>()).add(event);
    }
    List<EventSummary> summaries = new ArrayList<>();
    byWord.forEach((what, same) -> summaries.add(new EventSummary(what, same)));
    return List.copyOf(summaries);
  }

  /** How long they lasted together, s, as far as their ends were seen. */
  public double seconds() {
    return events.stream()
        .mapToDouble(EventRecord::lengthSeconds)
        .filter(seconds -> !Double.isNaN(seconds))
        .sum();
  }

  /** What they counted together: pairs, frames, entries. */
  public long count() {
    return events.stream().mapToLong(EventRecord::count).sum();
  }

  /** How many of them have no end. */
  public long unended() {
    return events.stream().filter(event -> Double.isNaN(event.lengthSeconds())).count();
  }

  /** True if the lamp was in fault meanwhile. */
  public boolean fault() {
    return events.stream().anyMatch(EventRecord::fault);
  }
}
