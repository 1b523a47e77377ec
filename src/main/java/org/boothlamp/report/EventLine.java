package org.boothlamp.report;

import java.util.List;
import org.boothlamp.words.Language;
import org.boothlamp.words.Phrases;

/** All events of one word as a line for people. */
final class EventLine {

  /** More times than this are not written out. */
  private static final int MOST_TIMES = 4;

  private static final EventWords WORDS = new EventWords(Phrases.in(Language.ENGLISH));

  private EventLine() {}

  /** "no samples 2x, 5.3 s together, at 09:01:10 and 11:02:55. Nothing was measured …". */
  static String of(EventSummary events, ShiftSpan span) {
    StringBuilder out = new StringBuilder(events.what());
    int times = events.events().size();
    if (times > 1) {
      out.append(' ').append(times).append('x');
    }
    if (events.count() > 0) {
      out.append(", ").append(WORDS.counted(events.what(), events.count()));
    }
    appendLength(out, events, times);
    appendTimes(out, events.events(), span);
    appendDetails(out, events.events());
    out.append('.');
    String meaning = WORDS.meaning(events.what());
    return meaning.isEmpty() ? out.toString() : out.append(' ').append(meaning).toString();
  }

  /** The same of a start in which the clock was never set: nobody knows at what times. */
  static String untimed(EventSummary events, long start) {
    StringBuilder out = new StringBuilder("start ").append(start).append(": ");
    out.append(events.what());
    int times = events.events().size();
    if (times > 1) {
      out.append(' ').append(times).append('x');
    }
    appendLength(out, events, times);
    appendDetails(out, events.events());
    return out.append(". ").append(WORDS.meaning(events.what())).toString().strip();
  }

  private static void appendLength(StringBuilder out, EventSummary events, int times) {
    if (events.seconds() > 0) {
      out.append(", ").append(Durations.words(events.seconds()));
      out.append(times > 1 ? " together" : "");
    }
    if (events.unended() > 0) {
      out.append(times > 1 ? ", " + events.unended() + " without an end" : ", end not seen");
    }
  }

  private static void appendTimes(StringBuilder out, List<EventRecord> events, ShiftSpan span) {
    int shown = Math.min(events.size(), MOST_TIMES);
    for (int i = 0; i < shown; i++) {
      out.append(i == 0 ? ", at " : i == events.size() - 1 ? " and " : ", ");
      out.append(TimesOfDay.words(events.get(i).startWallMillis(), span));
    }
    if (events.size() > shown) {
      out.append(" and ").append(events.size() - shown).append(" times more");
    }
  }

  private static void appendDetails(StringBuilder out, List<EventRecord> events) {
    List<String> details =
        events.stream()
            .map(EventRecord::detail)
            .filter(detail -> !detail.isEmpty())
            .distinct()
            .limit(MOST_TIMES)
            .toList();
    if (!details.isEmpty()) {
      out.append(" (").append(String.join("; ", details)).append(')');
    }
  }
}
