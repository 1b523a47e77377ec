package org.boothlamp.report;

import java.util.Set;
import org.boothlamp.words.Phrases;

/**
 * What the events of the log mean to somebody who reads figures, in one language. The keys are the
 * words stored in the log; a word that is not known here is shown as it stands. Safe to share.
 */
final class EventWords {

  private static final Set<String> EVERYDAY =
      Set.of(
          "started",
          "stopped",
          "signed in",
          "sampling",
          "clock set",
          "old rows deleted",
          "calibration missing",
          "calibration overdue",
          "calibration taken up",
          "calibration withdrawn");

  private final Phrases phrases;

  EventWords(Phrases phrases) {
    this.phrases = phrases;
  }

  /** False for what belongs to every day; an event that is not known here is a doubt. */
  static boolean isDoubt(String what) {
    return !EVERYDAY.contains(what);
  }

  /** The phrase that names an event; what else is said of it begins so. */
  static String key(String what) {
    return "shift.event." + what.replace(' ', '-');
  }

  /** The event's name. */
  String name(String what) {
    return phrases.has(key(what)) ? phrases.say(key(what)) : what;
  }

  /** What it says of the figures, as sentences; empty if nothing. */
  String meaning(String what) {
    String key = key(what) + ".meaning";
    return phrases.has(key) ? phrases.say(key) : "";
  }

  /** "12 frames"; the bare number if it is not known what is counted. */
  String counted(String what, long count) {
    String key = key(what) + ".count";
    return phrases.has(key + ".one")
        ? phrases.count(key, count)
        : phrases.say("shift.event.counted", Long.toString(count));
  }
}
