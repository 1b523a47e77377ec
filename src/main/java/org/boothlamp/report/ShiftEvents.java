package org.boothlamp.report;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;

/**
 * The events of a shift in sentences, in the language of a page. A word of the log that no phrase
 * is known for is shown as it stands; so is a detail, which the log holds in English.
 */
final class ShiftEvents {

  /** More times and details than this are not written out. */
  private static final int MOST = 4;

  private final ShiftSpan span;
  private final ShiftWords words;

  private ShiftEvents(ShiftSpan span, ShiftWords words) {
    this.span = span;
    this.words = words;
  }

  /** Sentences of the events that put figures in doubt, or of the others. */
  static List<String> of(ShiftReport report, ShiftWords words, boolean doubts) {
    ShiftEvents events = new ShiftEvents(report.span(), words);
    List<String> sentences = new ArrayList<>();
    for (EventSummary summary : EventSummary.of(report.events())) {
      if (EventWords.isDoubt(summary.what()) == doubts) {
        sentences.add(events.sentence(summary, events.times(summary.events())));
      }
    }
    for (UntimedSummary start : report.untimed()) {
      String when = words.say("event.untimed", Long.toString(start.number()));
      for (EventSummary summary : EventSummary.of(start.events())) {
        if (EventWords.isDoubt(summary.what()) == doubts) {
          sentences.add(events.sentence(summary, when));
        }
      }
    }
    return sentences;
  }

  private String sentence(EventSummary events, String when) {
    List<String> parts = new ArrayList<>();
    int times = events.events().size();
    String name = words.events().name(events.what());
    parts.add(times > 1 ? name + " " + times + "×" : name);
    if (events.count() > 0) {
      parts.add(words.events().counted(events.what(), events.count()));
    }
    addLength(parts, events, times);
    parts.add(when);
    String details = details(events.events());
    String meaning = words.events().meaning(events.what());
    return String.join(", ", parts)
        + (details.isEmpty() ? "" : " (" + details + ")")
        + "."
        + (meaning.isEmpty() ? "" : " " + meaning);
  }

  private void addLength(List<String> parts, EventSummary events, int times) {
    if (events.seconds() > 0) {
      String seconds = Durations.words(events.seconds());
      parts.add(times > 1 ? words.say("event.together", seconds) : seconds);
    }
    if (events.unended() > 0) {
      parts.add(words.say("event.unended", Long.toString(events.unended())));
    }
  }

  private String times(List<EventRecord> events) {
    String shown =
        events.stream()
            .limit(MOST)
            .map(event -> TimesOfDay.words(event.startWallMillis(), span))
            .collect(Collectors.joining(", "));
    int more = events.size() - MOST;
    return more > 0 ? words.say("event.more", shown, Integer.toString(more)) : shown;
  }

  private static String details(List<EventRecord> events) {
    return events.stream()
        .map(EventRecord::detail)
        .filter(detail -> !detail.isEmpty())
        .distinct()
        .limit(MOST)
        .collect(Collectors.joining("; "));
  }
}
