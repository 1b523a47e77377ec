package org.boothlamp.report;

import java.util.HashMap;
import java.util.Map;
import java.util.Set;
import org.boothlamp.health.HealthFault;

/**
 * What the events of the log mean to somebody who reads figures. The keys are the words stored in
 * the log; a word that is not here is shown as it stands.
 */
final class EventWords {

  /** What an event counts, and what it says of the figures. */
  private record Meaning(String one, String many, String text) {}

  private static final Map<String, Meaning> MEANINGS = meanings();

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

  private EventWords() {}

  private static Map<String, Meaning> meanings() {
    Map<String, Meaning> meanings = new HashMap<>(ofTheBooth());
    for (HealthFault fault : HealthFault.values()) {
      String text = fault.meaning() + " The lamp showed fault. Next: " + fault.nextMove() + ".";
      meanings.put(fault.word(), new Meaning("", "", text));
    }
    return Map.copyOf(meanings);
  }

  private static Map<String, Meaning> ofTheBooth() {
    return Map.ofEntries(
        of("started", ""),
        of("stopped", "Nothing was measured until the monitor was started again."),
        of("signed in", ""),
        of("sampling", ""),
        counts(
            "rate not held",
            "pair",
            "pairs",
            "Never taken, because this computer or the bus is too slow for the rate in the"
                + " settings: missing time, not 0 A. Next: lower source.pairs_per_second."),
        of(
            "sign-in refused",
            "The procedure could not be loaded; runs after it were not judged by it."),
        of("unknown badge", "Runs after it count to whoever was signed in before, or to nobody."),
        of("badge reader lost", "Nobody could sign in with a badge meanwhile."),
        of("no samples", "Nothing was measured meanwhile; the lamp showed fault."),
        counts("lost pairs", "pair", "pairs", "Sent but never arrived: missing time, not 0 A."),
        counts("bad frames", "frame", "frames", "Damaged on the line and left out."),
        of("calibration missing", "The stated accuracy widened the amber band."),
        of("calibration overdue", "Its U was taken wider."),
        of("calibration taken up", ""),
        of("calibration withdrawn", ""),
        of("reconnected", "The line to the sensors had failed and was opened again."),
        of("format changed", "The sensors changed their rate or range in between."),
        counts("log queue full", "entry", "entries", "Lost: runs may be missing here."),
        of("page not open", "Nobody could look at the booth from a browser."),
        of("log stalled", "The log could not be written for a while."),
        of("disk full", "The log had no room for a while; rows waited in memory."),
        of(
            "log damaged",
            "It lies beside the log under that name; what could be read of it is taken over."),
        counts("log salvaged", "page", "pages", "Runs from before it may be missing."),
        of("clock set", "All times of that start were put right."),
        of("clock stepped", "The log kept its own time."),
        counts(
            "old rows deleted",
            "row",
            "rows",
            "Older than [retention] in the settings lets them become."),
        of("power loss", "Up to the last 2 s of the run that was burning are missing."));
  }

  /** False for what belongs to every day; an event that is not known here is a doubt. */
  static boolean isDoubt(String what) {
    return !EVERYDAY.contains(what);
  }

  private static Map.Entry<String, Meaning> of(String what, String text) {
    return Map.entry(what, new Meaning("", "", text));
  }

  private static Map.Entry<String, Meaning> counts(
      String what, String one, String many, String text) {
    return Map.entry(what, new Meaning(one, many, text));
  }

  /** What it says of the figures, as sentences; empty if nothing. */
  static String meaning(String what) {
    Meaning meaning = MEANINGS.get(what);
    return meaning == null ? "" : meaning.text();
  }

  /** "12 frames"; the bare number if it is not known what is counted. */
  static String counted(String what, long count) {
    Meaning meaning = MEANINGS.get(what);
    return meaning == null || meaning.one().isEmpty()
        ? "" + count + Numbers.GLUE + "counted"
        : Numbers.counted(count, meaning.one(), meaning.many());
  }
}
