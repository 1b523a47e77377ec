package org.boothlamp.cli;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.DoubleStream;
import org.boothlamp.calibration.CalibrationHead;
import org.boothlamp.calibration.CalibrationOutcome;
import org.boothlamp.calibration.CalibrationPoint;
import org.boothlamp.calibration.PointPlan;
import org.boothlamp.calibration.ReferenceDoubt;
import org.boothlamp.calibration.WindowFigures;

/**
 * Leads a person through the points of a calibration and its verdict. Every point is in the book
 * before the next is asked for. Confined to one thread.
 */
final class CalibrationDialogue {

  /** How it came to an end. */
  enum Ending {
    ACCEPTED,
    REFUSED,
    ABANDONED,
    /** Kept under way, on purpose. */
    LEFT,
    /** Kept under way, because nobody types any more. */
    CUT_OFF
  }

  private static final String HELP =
      """
      Enter             the level is set
      list              the points so far
      back              throw the last point away and take it again
      repeat N          throw point N away and take it again
      discard N REASON  throw point N away; reason and point stay in the record
      skip              leave this level out
      leave             stop here; the same command goes on with it
      abandon REASON    give this calibration up; its points stay in the record
      At the reference: type the reading, or repeat to measure anew.""";

  private static final String REVIEW_HELP =
      """
      accept            put it in force at the monitor's next start
      end               end it as refused
      list, repeat N, discard N REASON, leave, abandon REASON as before""";

  private final Terminal terminal;
  private final Conversation conversation;
  private final SteadySensor sensor;
  private final CalibrationUnderWay taking;
  private final CalibrationHead head;
  private final String unit;
  private PointPlan whole;
  private PointPlan plan;

  CalibrationDialogue(
      Terminal terminal,
      Conversation conversation,
      SteadySensor sensor,
      CalibrationUnderWay taking) {
    this.terminal = terminal;
    this.conversation = conversation;
    this.sensor = sensor;
    this.taking = taking;
    head = taking.head();
    unit = head.channel().unit();
  }

  /** From the levels to the end. */
  Ending run() {
    Ending ending = askLevels();
    while (ending == null) {
      PointPlan.Step step = plan.next(taking.points());
      ending = step == null ? review() : point(step);
    }
    return ending;
  }

  private Ending askLevels() {
    double[] usual = usualLevels();
    String shown = Arrays.stream(usual).mapToObj(Wording::number).collect(Collectors.joining(" "));
    while (true) {
      String answer =
          conversation.ask("Levels to set, in " + unit + ", separated by blanks [" + shown + "]");
      if (answer == null || answer.equals("leave")) {
        return answer == null ? Ending.CUT_OFF : Ending.LEFT;
      }
      double[] levels = answer.isEmpty() ? usual : levels(answer);
      if (levels.length >= head.rules().smallestLevels()) {
        whole = PointPlan.through(levels);
        plan = whole;
        return null;
      }
      conversation.say(
          "at least " + head.rules().smallestLevels() + " numbers are needed, such as: " + shown);
    }
  }

  /** Equal steps to full scale, and what was taken already. */
  private double[] usualLevels() {
    double[] even = PointPlan.evenly(head.rules().smallestLevels(), head.fullScale());
    double[] taken = taking.points().stream().mapToDouble(CalibrationPoint::level).toArray();
    boolean isUsual = Arrays.stream(taken).allMatch(t -> Arrays.binarySearch(even, t) >= 0);
    double highest = Arrays.stream(taken).max().orElse(Double.NEGATIVE_INFINITY);
    return isUsual
        ? even
        : DoubleStream.concat(
                Arrays.stream(taken), Arrays.stream(even).filter(level -> level > highest))
            .sorted()
            .distinct()
            .toArray();
  }

  private double[] levels(String answer) {
    List<Double> levels = new ArrayList<>();
    for (String word : answer.split("\\s+")) {
      double level = conversation.number(word);
      if (!Double.isNaN(level)) {
        levels.add(level);
      }
    }
    return levels.stream().mapToDouble(Double::doubleValue).distinct().toArray();
  }

  /** One point, or what was typed instead. */
  private Ending point(PointPlan.Step step) {
    String answer =
        conversation.ask(
            "Point "
                + whole.place(step)
                + " of "
                + whole.steps().size()
                + ": set "
                + CalibrationTalk.step(step, unit)
                + ", then press Enter (? for help)");
    if (answer == null || !answer.isEmpty()) {
      return obey(answer, step);
    }
    sensor.clear();
    WindowFigures figures = null;
    while (figures == null) {
      String typed = awaitStable();
      if (typed != null) {
        return obey(typed, step);
      }
      Taken taken = sensor.readsMeter() ? fromMeter() : fromPerson();
      if (taken.word != null || taken.isEnd) {
        return obey(taken.word, step);
      }
      figures = taken.figures;
      if (figures != null) {
        keep(step, taken);
      }
    }
    return null;
  }

  /** What came of asking for a reference: figures with one, a word, or neither: measure anew. */
  private record Taken(WindowFigures figures, double reference, String word, boolean isEnd) {
    static final Taken ANEW = new Taken(null, Double.NaN, null, false);
  }

  /** Null once the level is stable; what was typed if that came before. */
  private String awaitStable() {
    WaitLine line = new WaitLine(terminal, sensor);
    WindowFigures figures = sensor.figures();
    while (!sensor.isReady(figures)) {
      sensor.step();
      line.show();
      figures = sensor.figures();
      String typed = conversation.overheard();
      if (typed != null && !typed.isEmpty()) {
        line.say("interrupted: " + line.reason());
        return typed;
      }
    }
    line.say(
        "Stable for 10 s: "
            + CalibrationTalk.amount(sensor.nominalOf(figures), unit)
            + " by the nominal scale ("
            + CalibrationTalk.figures(figures)
            + ")");
    return null;
  }

  private Taken fromMeter() {
    WindowFigures figures = sensor.figures();
    conversation.say(CalibrationTalk.meter(figures, unit));
    return believed(figures, figures.reference().mean());
  }

  private Taken fromPerson() {
    while (true) {
      String answer =
          conversation.ask(
              "Reference reading now, in "
                  + unit
                  + " (full scale is "
                  + Wording.number(head.fullScale())
                  + "), such as 104.3:");
      WindowFigures figures = sensor.figures();
      if (answer == null) {
        return new Taken(null, Double.NaN, null, true);
      }
      if (answer.equals("repeat")) {
        sensor.clear();
        return Taken.ANEW;
      }
      if (answer.isEmpty() || Character.isLetter(answer.charAt(0)) || answer.equals("?")) {
        return new Taken(null, Double.NaN, answer.isEmpty() ? "?" : answer, false);
      }
      double reference = conversation.number(answer);
      if (!Double.isNaN(reference)) {
        return sensor.isReady(figures) ? believed(figures, reference) : moved();
      }
    }
  }

  private Taken moved() {
    conversation.say(
        "the level has moved while the reading was typed, and both must be of the same time: wait"
            + " until it is stable, and read the meter again");
    return Taken.ANEW;
  }

  private Taken believed(WindowFigures figures, double reference) {
    String question =
        ReferenceDoubt.question(
            head.channel(), reference, sensor.nominalOf(figures), head.fullScale());
    if (question == null || conversation.confirms(question + ". Is it right all the same?")) {
      return new Taken(figures, reference, null, false);
    }
    conversation.say("then not; measuring anew");
    sensor.clear();
    return Taken.ANEW;
  }

  private void keep(PointPlan.Step step, Taken taken) {
    taking.take(taken.figures.point(step.level(), step.direction(), taken.reference));
    int last = taking.points().size() - 1;
    conversation.say("kept: " + CalibrationTalk.point(last, taking.points().get(last), head));
  }

  private Ending review() {
    CalibrationOutcome outcome = taking.evaluate();
    conversation.say("\n" + CalibrationTalk.points(taking.points(), head));
    conversation.say(CalibrationTalk.summary(outcome));
    boolean acceptable = outcome.verdict().isAccepted();
    String answer =
        conversation.ask(
            acceptable
                ? "accept it, or repeat or discard a point, or leave (? for help)"
                : "It cannot be accepted: repeat or discard a point, end it as refused, or leave (?"
                    + " for help)");
    if (acceptable && "accept".equals(answer)) {
      taking.finish(outcome);
      return Ending.ACCEPTED;
    }
    if (!acceptable && "end".equals(answer)) {
      taking.finish(outcome);
      return Ending.REFUSED;
    }
    if ("?".equals(answer)) {
      conversation.say(REVIEW_HELP);
      return null;
    }
    return obey(answer, null);
  }

  /** Does what a word says; null if it goes on. */
  private Ending obey(String typed, PointPlan.Step step) {
    if (typed == null) {
      return Ending.CUT_OFF;
    }
    String[] words = typed.split("\\s+", 2);
    String rest = words.length < 2 ? "" : words[1].strip();
    switch (words[0]) {
      case "leave":
        return Ending.LEFT;
      case "abandon":
        return abandon(rest);
      case "list":
        conversation.say(CalibrationTalk.points(taking.points(), head));
        return null;
      case "skip":
        skip(step);
        return null;
      case "back":
        discard("", rest.isEmpty() ? "taken again" : rest);
        return null;
      case "repeat":
        discard(rest, "taken again");
        return null;
      case "discard":
        discard(rest, "");
        return null;
      default:
        conversation.say("?".equals(words[0]) ? HELP : "no such word: " + words[0] + "\n" + HELP);
        return null;
    }
  }

  private Ending abandon(String reason) {
    String why =
        reason.isEmpty() ? conversation.ask("Why? The reason stays in the record.") : reason;
    if (why == null || why.isEmpty()) {
      conversation.say("without a reason it is not given up");
      return null;
    }
    taking.abandon(why);
    return Ending.ABANDONED;
  }

  private void skip(PointPlan.Step step) {
    if (step == null) {
      conversation.say("there is no level left to skip");
      return;
    }
    plan = new PointPlan(plan.steps().stream().filter(other -> !other.equals(step)).toList());
  }

  /**
   * Throws a point away.
   *
   * @param rest what follows the word: its number, else the last used one is meant; then the reason
   * @param usualReason if none is typed; empty if one has to be asked for
   */
  private void discard(String rest, String usualReason) {
    String[] words = rest.split("\\s+", 2);
    boolean numbered = words[0].matches("\\d{1,4}");
    int index = numbered ? Integer.parseInt(words[0]) - 1 : taking.lastUsed();
    String typed = numbered ? (words.length < 2 ? "" : words[1]) : rest;
    if (index < 0 || index >= taking.points().size()) {
      conversation.say("there is no such point; list shows them");
    } else if (taking.points().get(index).isDiscarded()) {
      conversation.say("point " + (index + 1) + " was thrown away before; list shows them");
    } else {
      discard(index, typed.isEmpty() ? usualReason : typed);
    }
  }

  private void discard(int index, String reason) {
    String why =
        reason.isEmpty()
            ? conversation.ask(
                "Why is point " + (index + 1) + " thrown away? It stays in the record.")
            : reason;
    if (why == null || why.isEmpty()) {
      conversation.say("without a reason it stays");
      return;
    }
    taking.discard(index, why);
    conversation.say("thrown away: point " + (index + 1) + ", " + why);
  }
}
