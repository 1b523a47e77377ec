package org.boothlamp.report;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.boothlamp.judging.Side;
import org.boothlamp.judging.SignificantFigures;
import org.boothlamp.technique.Cause;
import org.boothlamp.technique.Doubt;
import org.boothlamp.technique.Estimate;
import org.boothlamp.technique.ExplainedSpell;
import org.boothlamp.technique.Spell;
import org.boothlamp.technique.TechniqueReading;
import org.boothlamp.technique.TransferState;
import org.boothlamp.words.Phrases;
import org.boothlamp.words.Units;

/**
 * A run's technique in plain words of one language, so that a trainee knows what to do otherwise.
 * Safe to share.
 */
public final class TechniqueWords {

  /** A spell of which the middle is in the first or last third of the run has a place. */
  private static final double THIRD = 1.0 / 3;

  /** Up to this there is a word for how many times. */
  private static final int LARGEST_WORD = 3;

  private final Phrases phrases;
  private final Units units;

  /**
   * The words of a language.
   *
   * @param units of lengths
   */
  public TechniqueWords(Phrases phrases, Units units) {
    this.phrases = phrases;
    this.units = units;
  }

  /** What a run's amps and volts say; empty if there is nothing to say or nothing was read. */
  public String sentence(RunRecord run) {
    TechniqueReading reading = run.notes().technique();
    return reading == null ? "" : sentence(reading, run.lengthSeconds());
  }

  /**
   * What happened, one sentence for each cause, the most frequent first, then the transfer; empty
   * if there is nothing to say.
   *
   * @param runSeconds length of the run
   */
  public String sentence(TechniqueReading reading, double runSeconds) {
    List<String> sentences = new ArrayList<>();
    byCause(reading).entrySet().stream()
        .sorted((one, other) -> other.getValue().size() - one.getValue().size())
        .forEach(entry -> sentences.add(sentence(entry.getKey(), entry.getValue(), runSeconds)));
    String transfer = transfer(reading.transferState());
    if (!transfer.isEmpty()) {
      sentences.add(transfer);
    }
    return String.join(" ", sentences);
  }

  private static Map<Cause, List<ExplainedSpell>> byCause(TechniqueReading reading) {
    Map<Cause, List<ExplainedSpell>> byCause = new EnumMap<>(Cause.class);
    for (ExplainedSpell spell : reading.spells()) {
      if (spell.cause() != Cause.SLOPE && spell.cause() != Cause.WHIP) {
        byCause.computeIfAbsent(spell.cause(), cause -> new ArrayList<>()).add(spell);
      }
    }
    return byCause;
  }

  private String sentence(Cause cause, List<ExplainedSpell> spells, double runSeconds) {
    String what =
        switch (cause) {
          case MACHINE_SETTING -> say("from-the-first", which(spells));
          case CANNOT_TELL -> which(spells) + " " + times(occasions(spells));
          default ->
              hand(cause, spells) + " " + times(occasions(spells)) + place(spells, runSeconds);
        };
    return upperCase(what) + ": " + advice(cause, spells) + ".";
  }

  private static String upperCase(String text) {
    return text.substring(0, 1).toUpperCase(Locale.ROOT) + text.substring(1);
  }

  /** What amps and volts did, as measured: amps that stood still are not said to have moved. */
  private String hand(Cause cause, List<ExplainedSpell> spells) {
    boolean amps = spells.stream().allMatch(ExplainedSpell::isAmpsMoved);
    return switch (cause) {
      case ARC_LONGER -> say(amps ? "did.volts-up-amps-down" : "did.volts-up");
      case ARC_SHORTER -> say(amps ? "did.volts-down-amps-up" : "did.volts-down");
      case STICK_OUT_LONGER -> say("did.amps-down");
      default -> say("did.amps-up");
    };
  }

  /** Volts and amps that were outside at the same time were so once. */
  private static int occasions(List<ExplainedSpell> spells) {
    int occasions = 0;
    double end = Double.NEGATIVE_INFINITY;
    for (Spell spell : inOrder(spells)) {
      occasions += spell.startSeconds() >= end ? 1 : 0;
      end = Math.max(end, spell.endSeconds());
    }
    return occasions;
  }

  private static List<Spell> inOrder(List<ExplainedSpell> spells) {
    return spells.stream()
        .map(ExplainedSpell::spell)
        .sorted(Comparator.comparingDouble(Spell::startSeconds))
        .toList();
  }

  private String times(int count) {
    return count <= LARGEST_WORD
        ? say("times." + count)
        : say("times.more", Integer.toString(count));
  }

  private String place(List<ExplainedSpell> spells, double runSeconds) {
    boolean first = spells.stream().allMatch(spell -> middle(spell) <= THIRD * runSeconds);
    boolean last = spells.stream().allMatch(spell -> middle(spell) >= (1 - THIRD) * runSeconds);
    return first ? " " + say("place.start") : last ? " " + say("place.end") : "";
  }

  private static double middle(ExplainedSpell spell) {
    return (spell.spell().startSeconds() + spell.spell().endSeconds()) / 2;
  }

  /** "amps high and volts high". */
  private String which(List<ExplainedSpell> spells) {
    List<String> which =
        spells.stream()
            .map(ExplainedSpell::spell)
            .map(spell -> "side." + spell.quantity().key() + "." + spell.side().word())
            .map(key -> phrases.say("shift." + key))
            .distinct()
            .toList();
    return String.join(" " + say("and") + " ", which);
  }

  private String advice(Cause cause, List<ExplainedSpell> spells) {
    return cause == Cause.CANNOT_TELL
        ? cause(cause) + " (" + doubts(spells) + ")"
        : cause(cause) + (cause.isHand() ? change(spells) : "");
  }

  /** Why a run's excursion was one; empty if it was not read or cannot be told. */
  String cause(RunRecord run, ExcursionRecord excursion) {
    TechniqueReading reading = run.notes().technique();
    int number = run.excursions().indexOf(excursion);
    if (reading == null || number < 0 || number >= reading.spells().size()) {
      return "";
    }
    Cause cause = reading.spells().get(number).cause();
    return cause == Cause.CANNOT_TELL ? "" : cause(cause);
  }

  /** "arc getting long". */
  public String cause(Cause cause) {
    return say("cause." + cause.word().replace(' ', '-'));
  }

  private String doubts(List<ExplainedSpell> spells) {
    return String.join("; ", spells.stream().map(this::doubt).distinct().toList());
  }

  private String doubt(ExplainedSpell spell) {
    String key = "doubt." + spell.doubt().name().toLowerCase(Locale.ROOT).replace('_', '-');
    return spell.doubt() == Doubt.STICK_OUT_OR_FEED
        ? say(key + (spell.spell().side() == Side.LOW ? ".low" : ".high"))
        : say(key);
  }

  /** The largest change that is known, with its expanded uncertainty. */
  private String change(List<ExplainedSpell> spells) {
    Estimate largest = Estimate.UNKNOWN;
    for (ExplainedSpell spell : spells) {
      Estimate change = spell.lengthChangeMm();
      boolean larger = !largest.isKnown() || Math.abs(change.value()) > Math.abs(largest.value());
      largest = change.isKnown() && larger ? change : largest;
    }
    return largest.isKnown()
        ? say("change", length(Math.abs(largest.value()), 2), length(2 * largest.uncertainty(), 1))
        : "";
  }

  private String length(double millimetres, int figures) {
    return SignificantFigures.of(units.length(millimetres), figures)
        + Numbers.GLUE
        + units.lengthUnit();
  }

  private String transfer(TransferState state) {
    return switch (state) {
      case TOO_COLD -> say("transfer.too-cold");
      case TOO_HOT -> say("transfer.too-hot");
      case UNEVEN -> say("transfer.uneven");
      case NOT_MEASURED, NO_SHORTS, SPRAY, STEADY -> "";
    };
  }

  /**
   * "Most often: arc getting long, in 4 of 5." over the excursions of some runs; empty if no cause
   * stands out.
   */
  public String mostOften(List<RunRecord> runs) {
    CauseTally tally = CauseTally.of(runs);
    return tally == null
        ? ""
        : say(
            "most-often",
            cause(tally.cause()),
            Integer.toString(tally.count()),
            Integer.toString(tally.excursions()));
  }

  private String say(String key, Object... parts) {
    return phrases.say("technique." + key, parts);
  }
}
