package org.boothlamp.technique;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Collectors;
import org.boothlamp.judging.Side;
import org.boothlamp.judging.SignificantFigures;
import org.boothlamp.procedure.Quantity;

/**
 * A reading in plain words, so that a trainee knows what to do otherwise. English; all words are
 * here. Safe to share.
 */
public final class TechniqueSentence {

  /** A spell of which the middle is in the first or last third of the run has a place. */
  private static final double THIRD = 1.0 / 3;

  private TechniqueSentence() {}

  /**
   * What happened, one sentence for each cause, the most frequent first, then the transfer; empty
   * if there is nothing to say.
   *
   * @param runSeconds length of the run
   */
  public static String of(TechniqueReading reading, double runSeconds) {
    List<String> sentences = new ArrayList<>();
    Map<Cause, List<ExplainedSpell>> byCause = byCause(reading);
    byCause.entrySet().stream()
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

  private static String sentence(Cause cause, List<ExplainedSpell> spells, double runSeconds) {
    String what =
        switch (cause) {
          case MACHINE_SETTING -> machine(spells);
          case CANNOT_TELL -> doubt(spells);
          default -> hand(cause, spells) + times(spells.size()) + place(spells, runSeconds);
        };
    return upperCase(what + ": " + advice(cause, spells) + ".");
  }

  private static String upperCase(String text) {
    return text.substring(0, 1).toUpperCase(Locale.ROOT) + text.substring(1);
  }

  /** What amps and volts did, as measured: amps that stood still are not said to have moved. */
  private static String hand(Cause cause, List<ExplainedSpell> spells) {
    boolean amps =
        spells.stream().allMatch(spell -> DirectionRule.isSeen(spell.evidence().ampsRatio()));
    return switch (cause) {
      case ARC_LONGER -> amps ? "volts rose and amps fell" : "volts rose";
      case ARC_SHORTER -> amps ? "volts fell and amps rose" : "volts fell";
      case STICK_OUT_LONGER -> "amps fell with the volts steady";
      default -> "amps rose with the volts steady";
    };
  }

  private static String times(int count) {
    return switch (count) {
      case 1 -> " once";
      case 2 -> " twice";
      case 3 -> " three times";
      default -> " " + count + " times";
    };
  }

  private static String place(List<ExplainedSpell> spells, double runSeconds) {
    boolean first = spells.stream().allMatch(spell -> middle(spell) <= THIRD * runSeconds);
    boolean last = spells.stream().allMatch(spell -> middle(spell) >= (1 - THIRD) * runSeconds);
    return first ? " near the start" : last ? " near the end" : "";
  }

  private static double middle(ExplainedSpell spell) {
    return (spell.spell().startSeconds() + spell.spell().endSeconds()) / 2;
  }

  private static String machine(List<ExplainedSpell> spells) {
    return which(spells) + " from the first second";
  }

  private static String which(List<ExplainedSpell> spells) {
    return spells.stream()
        .map(spell -> word(spell.spell().quantity()) + " " + spell.spell().side().word())
        .distinct()
        .collect(Collectors.joining(" and "));
  }

  private static String word(Quantity quantity) {
    return switch (quantity) {
      case AMPS -> "amps";
      case VOLTS -> "volts";
      case POWER_W -> "power";
      case SHORTS_PER_S -> "short circuits";
      case HEAT_INPUT_KJ_PER_MM -> "heat input";
      case ARC_S -> "arc time";
    };
  }

  private static String doubt(List<ExplainedSpell> spells) {
    return which(spells) + times(spells.size());
  }

  private static String advice(Cause cause, List<ExplainedSpell> spells) {
    return switch (cause) {
      case ARC_LONGER -> "arc getting long" + millimetres(spells);
      case ARC_SHORTER -> "arc getting short" + millimetres(spells);
      case STICK_OUT_LONGER -> "stick-out getting long" + millimetres(spells);
      case STICK_OUT_SHORTER -> "stick-out getting short" + millimetres(spells);
      case MACHINE_SETTING -> "check the machine's setting, not the hand";
      default -> "cannot tell why (" + doubts(spells) + ")";
    };
  }

  private static String doubts(List<ExplainedSpell> spells) {
    return spells.stream()
        .map(spell -> spell.doubt() == Doubt.STICK_OUT_OR_FEED ? feed(spell) : spell.doubt().word())
        .distinct()
        .collect(Collectors.joining("; "));
  }

  private static String feed(ExplainedSpell spell) {
    return spell.spell().side() == Side.LOW
        ? "stick-out too long, or wire feed set too low"
        : "stick-out too short, or wire feed set too high";
  }

  /** The largest change that is known, with its expanded uncertainty. */
  private static String millimetres(List<ExplainedSpell> spells) {
    Estimate largest = Estimate.UNKNOWN;
    for (ExplainedSpell spell : spells) {
      Estimate change = spell.lengthChangeMm();
      boolean larger = !largest.isKnown() || Math.abs(change.value()) > Math.abs(largest.value());
      largest = change.isKnown() && larger ? change : largest;
    }
    return largest.isKnown()
        ? ", by up to "
            + SignificantFigures.of(Math.abs(largest.value()), 2)
            + " mm, give or take "
            + SignificantFigures.of(2 * largest.uncertainty(), 1)
        : "";
  }

  private static String transfer(TransferState state) {
    return switch (state) {
      case TOO_COLD -> "Short circuits are too long: too cold, the wire is stubbing.";
      case TOO_HOT ->
          "Short circuits are few and short: too hot, the arc is leaving short-circuit.";
      case UNEVEN -> "Short circuits come unevenly.";
      case NOT_MEASURED, NO_SHORTS, SPRAY, STEADY -> "";
    };
  }
}
