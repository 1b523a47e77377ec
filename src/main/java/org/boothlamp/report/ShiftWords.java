package org.boothlamp.report;

import java.util.ArrayList;
import java.util.List;
import org.boothlamp.calibration.Channel;
import org.boothlamp.judging.Side;
import org.boothlamp.procedure.Quantity;
import org.boothlamp.procedure.Window;
import org.boothlamp.words.Phrases;
import org.boothlamp.words.Units;

/** What a shift's page says, in one language. Confined to one thread. */
final class ShiftWords {

  /** A code longer than this is cut short where it stands among others. */
  private static final int LONGEST_CODE = 20;

  private final Phrases phrases;
  private final TechniqueWords technique;
  private final BeadWords beads;
  private final EventWords events;

  ShiftWords(Phrases phrases, Units units) {
    this.phrases = phrases;
    technique = new TechniqueWords(phrases, units);
    beads = new BeadWords(phrases, units);
    events = new EventWords(phrases);
  }

  String say(String key, Object... parts) {
    return phrases.say("shift." + key, parts);
  }

  String count(String key, long count) {
    return phrases.count("shift." + key, count);
  }

  String language() {
    return phrases.language().code();
  }

  String runs(long count) {
    return phrases.count("run", count);
  }

  /** A code, or that nobody was signed in. */
  String trainee(String code) {
    return code.isEmpty() ? phrases.say("nobody") : code;
  }

  /** The same, cut short if it is very long. */
  String shortTrainee(String code) {
    String name = VisibleText.of(trainee(code));
    return name.codePointCount(0, name.length()) <= LONGEST_CODE
        ? name
        : name.substring(0, name.offsetByCodePoints(0, LONGEST_CODE - 1)) + "…";
  }

  String share(double share) {
    return Double.isNaN(share) ? say("not-judged") : Numbers.share(share);
  }

  /** "volts high". */
  String outside(Quantity quantity, Side side) {
    return say("side." + quantity.key() + "." + side.word());
  }

  /** "high", "low" or nothing: where a value lies against its window, if it has one. */
  String side(double value, Window window) {
    String side = Words.side(value, window);
    return side.isEmpty() ? "" : say("side." + side);
  }

  /** "S-3F-18 r2 fill". */
  String pass(PassKey key) {
    return key.isNone()
        ? say("no-procedure")
        : Words.pass(new PassKey(key.procedureId(), key.revision(), key.pass(), List.of()));
  }

  /** "volts high 2× 1.5 s (worst 28.9 V)", one for each quantity and side. */
  String excursions(List<ExcursionTally> tallies) {
    List<String> words = new ArrayList<>();
    for (ExcursionTally tally : tallies) {
      words.add(
          say(
              "excursion",
              outside(tally.quantity(), tally.side()),
              Integer.toString(tally.count()),
              Durations.words(tally.seconds()),
              worst(tally.quantity(), tally.worst())));
    }
    return String.join("; ", words);
  }

  String worst(Quantity quantity, double worst) {
    return Words.value(quantity, worst);
  }

  /** "volts high 7×, in 5 of 9 runs", that there was none, or nothing if nothing was judged. */
  String oftenest(GlanceRow row) {
    OftenOutside most = row.oftenest();
    if (most == null) {
      return withoutExcursion(row);
    }
    return say(
        "outside.most",
        outside(most.quantity(), most.side()),
        Integer.toString(most.count()),
        Integer.toString(most.runs()),
        runs(row.judgedRuns()));
  }

  /** Red time shorter than an excursion is none, but it is not nothing either. */
  private String withoutExcursion(GlanceRow row) {
    double red = row.summary().total().redSeconds();
    if (red > 0) {
      return say("outside.briefly", Durations.words(red));
    }
    return row.judgedRuns() > 0 ? say("outside.none") : "";
  }

  /** What most deserves a look, in a sentence or two. */
  String lookAt(GlanceRow row) {
    List<String> sentences = new ArrayList<>(3);
    sentences.add(look(row));
    if (row.change() != null && row.change().direction() == Trend.Direction.WORSE) {
      sentences.add(count("look.worse", row.change().days()));
    }
    if (row.judgedRuns() == 1) {
      sentences.add(say("look.one-run"));
    }
    String why = technique.mostOften(row.runs().stream().map(RunSummary::run).toList());
    if (!why.isEmpty()) {
      sentences.add(why);
    }
    return String.join(" ", sentences);
  }

  /** What a run's amps and volts say of the technique; empty if nothing. */
  String technique(RunRecord run) {
    return technique.sentence(run);
  }

  EventWords events() {
    return events;
  }

  /** What people said of a run after the weld, a note each. */
  List<String> said(RunRecord run) {
    return beads.notes(run);
  }

  private String look(GlanceRow row) {
    Figures figures = row.summary().total();
    return switch (row.lookAt()) {
      case POLARITY -> say("look.polarity");
      case FAULT -> say("look.fault", Durations.words(figures.faultSeconds()));
      case NO_RUN -> say("look.no-run");
      case NOT_JUDGED -> say("look.not-judged");
      case OUTSIDE -> look(row.asksForCompany() ? "look.beside" : "look.outside", row.oftenest());
      case BRIEFLY_OUTSIDE -> say("look.briefly");
      case STUCK -> count("look.stuck", row.summary().stuck());
      case ARC_OUTS -> count("look.arc-outs", figures.arcOuts());
      case NEAR -> say("look.near");
      case INSIDE -> say("look.inside");
    };
  }

  private String look(String key, OftenOutside most) {
    return most.pass().isEmpty() ? say(key) : say(key + ".pass", most.pass());
  }

  /** Which way the share went, with the points it went by. */
  String change(ChangeAgainstLastShifts change) {
    String points = Numbers.fixed(100 * Math.abs(change.change()), 0);
    return switch (change.direction()) {
      case BETTER -> say("change.better", points);
      case WORSE -> say("change.worse", points);
      case CANNOT_TELL -> say("change.unclear", signed(change.change()));
    };
  }

  private static String signed(double share) {
    String points = Numbers.fixed(100 * share, 0);
    return points.startsWith("-") || points.equals("0") ? points : "+" + points;
  }

  /** What it is compared with. */
  String comparedWith(ChangeAgainstLastShifts change) {
    return say(
        "change.with",
        Numbers.share(change.earlierShare()),
        count("days", change.days()),
        runs(change.earlierRuns()));
  }

  /** "2 touches, 1 of them a stuck electrode". */
  String touches(long touches, long stuck) {
    String count = count("touches", touches);
    return stuck == 0 ? count : say("touches", count, count("stuck", stuck));
  }

  String channel(Channel channel) {
    return say("channel." + channel.word());
  }

  /** Why a run's figures deserve less trust. */
  String flag(RunFlag flag) {
    return say("flag." + flag.word().replace(' ', '-'));
  }

  /** What arc-on time was divided by, as a sentence. */
  String dividedBy(ShiftTime shift) {
    String seconds = Durations.words(shift.seconds());
    return switch (shift.basis()) {
      case SHIFTS -> say("operator.shifts", seconds, String.join(", ", shift.names()));
      case ASKED -> say("operator.asked", seconds);
      case FIRST_TO_LAST -> say("operator.first-to-last", seconds);
    };
  }
}
