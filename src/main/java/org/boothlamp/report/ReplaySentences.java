package org.boothlamp.report;

import java.util.ArrayList;
import java.util.List;
import org.boothlamp.judging.Side;
import org.boothlamp.judging.Signal;
import org.boothlamp.procedure.Quantity;
import org.boothlamp.procedure.Window;
import org.boothlamp.words.Phrases;

/**
 * The sentence for each frame of a run: what cannot be trusted first, then what is wrong, then what
 * is right. Numbers in it stand for a whole spell, so that one spell says one thing. Confined to
 * one thread.
 */
final class ReplaySentences {

  /** Of two limits the nearer one, as a share of its window's width. */
  private record Nearest(Window window, Side side, double share) {}

  private final WeldReplay replay;
  private final RunRecord run;
  private final Phrases phrases;
  private final String[] said;

  ReplaySentences(WeldReplay replay, Phrases phrases) {
    this.replay = replay;
    this.phrases = phrases;
    run = replay.run();
    said = new String[replay.frames()];
  }

  /** What happens in a frame. */
  String at(int index) {
    if (said[index] == null) {
      said[index] = sentence(replay.frame(index), index);
    }
    return said[index];
  }

  private String sentence(ReplayFrame frame, int index) {
    double middle = frame.seconds() + WeldReplay.FRAME_SECONDS / 2;
    if (replay.isMissing(index)) {
      return phrases.say("replay.missing");
    }
    if (frame.signal() == Signal.FAULT) {
      return fault(replay.faultAt(middle));
    }
    if (replay.isArcOut(index)) {
      return phrases.say("replay.arc-out");
    }
    List<String> outside = excursionsAt(middle);
    return outside.isEmpty() ? bySignal(frame) : outside(outside);
  }

  private String fault(String word) {
    String key = "replay.fault." + word.replace(' ', '-');
    String what = word.isEmpty() || phrases.has(key) ? word : VisibleText.of(word);
    return what.isEmpty()
        ? phrases.say("replay.fault")
        : phrases.say("replay.fault.of", phrases.has(key) ? phrases.say(key) : what);
  }

  private List<String> excursionsAt(double seconds) {
    List<String> words = new ArrayList<>();
    for (ExcursionRecord excursion : run.excursions()) {
      double since = seconds - excursion.startSeconds();
      if (since >= 0 && since < excursion.lengthSeconds()) {
        words.add(excursion(excursion));
      }
    }
    return words;
  }

  private String excursion(ExcursionRecord excursion) {
    Quantity quantity = excursion.quantity();
    return phrases.say(
        "replay.excursion",
        beyond(quantity, excursion.side()),
        Durations.words(excursion.lengthSeconds()),
        value(excursion.worst(), quantity));
  }

  private String outside(List<String> words) {
    return phrases.say("replay.outside", String.join("; ", words));
  }

  /** "volts above 26 V". */
  private String beyond(Quantity quantity, Side side) {
    Window window = run.window(quantity);
    String limit = window == null ? "" : limit(window, side);
    String key = limit.isEmpty() ? "replay.off." : "replay.beyond.";
    return phrases.say(key + side.word(), quantity(quantity), limit).stripTrailing();
  }

  private String bySignal(ReplayFrame frame) {
    return switch (frame.signal()) {
      case GREEN -> phrases.say("replay.inside");
      case AMBER -> near(frame);
      case RED -> red(frame);
      case SETTLING, DARK, IDLE, FAULT ->
          phrases.say(run.windows().isEmpty() ? "replay.not-judged" : "replay.settling");
    };
  }

  private String near(ReplayFrame frame) {
    Nearest nearest = nearest(frame);
    return nearest == null
        ? phrases.say("replay.near")
        : phrases.say(
            "replay.near." + nearest.side().word(),
            quantity(nearest.window().quantity()),
            limit(nearest.window(), nearest.side()));
  }

  /** Outside for less than an excursion, or inside again while the lamp still holds. */
  private String red(ReplayFrame frame) {
    Nearest nearest = nearest(frame);
    if (nearest == null) {
      return phrases.say("replay.red");
    }
    return nearest.share() < 0
        ? outside(List.of(beyond(nearest.window().quantity(), nearest.side())))
        : phrases.say("replay.hold");
  }

  /** The limit that an average is nearest to, or farthest beyond; null if none is known. */
  private Nearest nearest(ReplayFrame frame) {
    Nearest nearest = null;
    for (Window window : run.windows()) {
      double value = average(frame, window.quantity());
      if (!Double.isNaN(value)) {
        Nearest low = new Nearest(window, Side.LOW, (value - window.low()) / window.width());
        Nearest high = new Nearest(window, Side.HIGH, (window.high() - value) / window.width());
        Nearest nearer = low.share() < high.share() ? low : high;
        nearest = nearest == null || nearer.share() < nearest.share() ? nearer : nearest;
      }
    }
    return nearest;
  }

  private static double average(ReplayFrame frame, Quantity quantity) {
    return switch (quantity) {
      case AMPS -> frame.averageAmps();
      case VOLTS -> frame.averageVolts();
      case POWER_W, SHORTS_PER_S, HEAT_INPUT_KJ_PER_MM, ARC_S -> Double.NaN;
    };
  }

  /** How the run ended. */
  String end() {
    String key = "replay.end." + run.end().replace(' ', '-');
    String why = phrases.has(key) ? phrases.say(key) : VisibleText.of(run.end());
    return phrases.say("replay.end", Durations.words(run.lengthSeconds()), why);
  }

  private String quantity(Quantity quantity) {
    return phrases.say("replay.quantity." + quantity.key());
  }

  private static String limit(Window window, Side side) {
    double limit = side == Side.LOW ? window.low() : window.high();
    return Numbers.plain(limit) + Numbers.GLUE + window.quantity().unit();
  }

  private static String value(double value, Quantity quantity) {
    return Numbers.fixed(value, 1) + Numbers.GLUE + quantity.unit();
  }
}
