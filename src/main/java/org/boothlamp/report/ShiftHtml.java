package org.boothlamp.report;

import java.util.List;
import java.util.function.LongFunction;
import org.boothlamp.words.Phrases;
import org.boothlamp.words.Units;

/**
 * A shift as one HTML file that is well-formed XML too, with its style and drawings inside, without
 * script and without an address of anything outside: the class at a glance, then of each trainee
 * the runs with a chart each, then what the numbers cannot be trusted for. A pure function.
 */
public final class ShiftHtml {

  /** More runs than this are listed without charts: a file of more is no longer read. */
  public static final int MOST_CHARTS = 400;

  private static final String POLICY = "default-src 'none'; style-src 'unsafe-inline'";

  private final ShiftReport report;
  private final Glance glance;
  private final ShiftWords words;
  private final LongFunction<RunStrip> strips;
  private final Markup page = new Markup();

  private ShiftHtml(
      ShiftReport report, Glance glance, LongFunction<RunStrip> strips, ShiftWords words) {
    this.report = report;
    this.glance = glance;
    this.strips = strips;
    this.words = words;
  }

  /**
   * The whole file.
   *
   * @param strips a run's chart by its id; null where there is none
   * @param units of lengths and what is made of them
   */
  public static String render(
      ShiftReport report,
      Glance glance,
      LongFunction<RunStrip> strips,
      Phrases phrases,
      Units units) {
    return new ShiftHtml(report, glance, strips, new ShiftWords(phrases, units)).render();
  }

  private String render() {
    page.verbatim("<!DOCTYPE html>\n").open("html", "lang", words.language());
    head();
    page.open("body");
    header();
    page.open("main");
    if (glance.rows().isEmpty()) {
      page.leaf("p", words.say("no-run"), "class", "box plain");
      doubts();
    } else {
      GlanceTable table = new GlanceTable(report, glance, words, page);
      table.append();
      runs();
      doubts();
      table.appendNotes();
    }
    page.close();
    footer();
    return page.close().close().toString();
  }

  private void head() {
    page.open("head").empty("meta", "charset", "utf-8");
    page.empty("meta", "http-equiv", "Content-Security-Policy", "content", POLICY);
    page.empty("meta", "name", "viewport", "content", "width=device-width, initial-scale=1");
    page.leaf("title", title() + ", " + report.span().words());
    page.open("style").verbatim("\n" + ShiftStyle.sheet()).close().close();
  }

  private String title() {
    return report.title().isEmpty() ? words.say("title") : report.title();
  }

  private void header() {
    String booth =
        report.booth().isEmpty() ? words.say("booths.all") : words.say("booth", report.booth());
    page.open("header").leaf("h1", title());
    String zone = words.say("zone", report.span().zone().getId());
    page.leaf("p", String.join(", ", booth, span(), zone), "class", "sub");
    if (!report.allRuns().isEmpty()) {
      page.leaf("p", headline());
    }
    page.close();
  }

  private String span() {
    return report.span().words(words.say("until"));
  }

  private String headline() {
    Figures total = report.total();
    String judged =
        total.judgedSeconds() > 0
            ? words.say(
                "judged",
                Durations.words(total.judgedSeconds()),
                Numbers.share(total.insideShare()))
            : words.say("judged.nothing");
    return String.join(
        ", ",
        words.count("trainees", report.traineeCount()),
        words.runs(total.runs()),
        words.say("arc", Durations.words(total.arcSeconds())),
        judged);
  }

  private void runs() {
    if (report.allRuns().isEmpty()) {
      return;
    }
    page.open("section").leaf("h2", words.say("runs"));
    boolean charts = report.allRuns().size() <= MOST_CHARTS;
    if (!charts) {
      page.leaf("p", words.say("charts.too-many", Integer.toString(MOST_CHARTS)));
    } else if (report.allRuns().stream().noneMatch(one -> strips.apply(one.run().id()) != null)) {
      page.leaf("p", words.say("charts.none"));
    } else {
      legend();
    }
    LongFunction<RunStrip> shown = charts ? strips : id -> null;
    TraineeSection section = new TraineeSection(report, words, shown, page);
    for (int i = 0; i < glance.rows().size(); i++) {
      section.append(glance.rows().get(i), GlanceTable.anchor(i));
    }
    page.close();
  }

  private void legend() {
    page.leaf("p", words.say("charts"), "class", "notes").open("p", "class", "notes");
    for (LevelColour level : List.of(LevelColour.GREEN, LevelColour.AMBER, LevelColour.RED)) {
      LevelDrawing.key(page, level.style(), level.tenths());
      page.text(" " + words.say("key." + level.style()) + " ");
    }
    LevelDrawing.key(page, "unjudged", LevelColour.GREEN.tenths());
    page.text(" " + words.say("key.unjudged") + " ");
    LevelDrawing.faultKey(page);
    page.text(" " + words.say("key.fault") + " ");
    LevelDrawing.outsideKey(page);
    page.text(" " + words.say("key.outside") + " ");
    LevelDrawing.arcOutKey(page);
    page.text(" " + words.say("key.arc-out"));
    page.close();
  }

  private void doubts() {
    page.open("section").leaf("h2", words.say("doubts"));
    list(ShiftDoubts.calibrations(report, words));
    List<String> doubts = ShiftDoubts.of(report, words);
    if (doubts.isEmpty()) {
      page.leaf("p", words.say("doubts.none"));
    }
    list(doubts);
    List<String> others = ShiftEvents.of(report, words, false);
    if (!others.isEmpty()) {
      page.leaf("h2", words.say("events"));
      list(others);
    }
    page.close();
  }

  private void list(List<String> items) {
    if (!items.isEmpty()) {
      page.open("ul");
      items.forEach(item -> page.leaf("li", item));
      page.close();
    }
  }

  private void footer() {
    page.open("footer").leaf("p", words.say("caution"));
    page.leaf("p", words.say("source"));
    page.close();
  }
}
