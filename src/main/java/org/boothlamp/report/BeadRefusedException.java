package org.boothlamp.report;

import java.util.List;
import java.util.stream.Collectors;
import org.boothlamp.words.Language;
import org.boothlamp.words.Phrases;
import org.boothlamp.words.Units;

/**
 * Something said of a run cannot be: what is wrong, and the next move, in any language and units.
 * The exception's own message is English and metric.
 */
public final class BeadRefusedException extends RuntimeException {

  private static final long serialVersionUID = 1L;

  @FunctionalInterface
  private interface Saying {
    String in(Phrases phrases, Units units);
  }

  private final transient Saying saying;

  private BeadRefusedException(Saying saying) {
    super(saying.in(Phrases.in(Language.ENGLISH), Units.METRIC));
    this.saying = saying;
  }

  /** The refusal for people. */
  public String say(Phrases phrases, Units units) {
    return saying.in(phrases, units);
  }

  /**
   * There is no such run.
   *
   * @param nearest numbers of runs near it; empty if there is no run at all
   */
  public static BeadRefusedException unknown(long run, List<Long> nearest) {
    String near = nearest.stream().map(String::valueOf).collect(Collectors.joining(", "));
    return new BeadRefusedException(
        (phrases, units) ->
            nearest.isEmpty()
                ? phrases.say("bead.refused.none")
                : phrases.say("bead.refused.unknown", Long.toString(run), near));
  }

  /** Its arc still burns, or nobody closed it yet. */
  static BeadRefusedException running(long run) {
    return new BeadRefusedException(
        (phrases, units) -> phrases.say("bead.refused.running", Long.toString(run)));
  }

  /** Its arc time or energy is not known. */
  static BeadRefusedException lost(long run) {
    return new BeadRefusedException(
        (phrases, units) -> phrases.say("bead.refused.lost", Long.toString(run)));
  }

  static BeadRefusedException length(double millimetres) {
    return new BeadRefusedException(
        (phrases, units) ->
            phrases.say(
                "bead.refused.length",
                UnitText.length(millimetres, units),
                UnitText.length(BeadRule.SHORTEST_MM, units),
                UnitText.length(BeadRule.LONGEST_MM, units)));
  }

  static BeadRefusedException speed(RunRecord run, double millimetres) {
    return new BeadRefusedException(
        (phrases, units) ->
            phrases.say(
                "bead.refused.speed",
                UnitText.length(millimetres, units),
                Durations.words(run.lengthSeconds()),
                UnitText.speed(millimetres / run.lengthSeconds(), units),
                UnitText.speed(BeadRule.SLOWEST_MM_PER_S, units),
                UnitText.speed(BeadRule.FASTEST_MM_PER_S, units)));
  }

  static BeadRefusedException note(int characters) {
    return new BeadRefusedException(
        (phrases, units) ->
            phrases.say(
                "bead.refused.note",
                Integer.toString(characters),
                Integer.toString(BeadRule.LONGEST_NOTE)));
  }

  /** There is no mark to take back. */
  public static BeadRefusedException notReference(long run) {
    return new BeadRefusedException(
        (phrases, units) -> phrases.say("bead.refused.notReference", Long.toString(run)));
  }
}
