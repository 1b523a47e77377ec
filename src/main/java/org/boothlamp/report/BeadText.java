package org.boothlamp.report;

import java.time.Instant;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.Locale;
import org.boothlamp.procedure.Process;

/** One run and its bead as text for people. A pure function. */
public final class BeadText {

  private static final DateTimeFormatter START =
      DateTimeFormatter.ofPattern("yyyy-MM-dd HH:mm:ss", Locale.ROOT);

  private BeadText() {}

  /**
   * The text, lines ended by a line feed.
   *
   * @param verdict what the bead makes known; null if it was not entered
   * @param width characters in a line
   */
  public static String render(
      RunSummary summary, HeatVerdict verdict, BeadWords words, ZoneId zone, int width) {
    TextPage page = new TextPage(Math.max(width, TextReport.LEAST_WIDTH), Colour.PLAIN);
    RunRecord run = summary.run();
    page.wrapped("", 2, head(run, zone));
    if (run.notes().isReference()) {
      page.wrapped("  ", 4, words.reference(run.notes().reference()));
    }
    if (verdict == null) {
      page.wrapped("  ", 4, "no bead length was entered");
      return page.toString();
    }
    page.wrapped("  ", 4, words.measured(verdict.heat()));
    page.wrapped("  ", 4, words.heatInput(verdict.heat(), Process.ofNumber(run.process())));
    if (!Double.isNaN(verdict.heat().factor())) {
      page.wrapped("  ", 4, words.place(verdict) + "; " + words.uncertainty(verdict));
    }
    words.doubts(summary).forEach(doubt -> page.wrapped("  ", 4, "but " + doubt));
    if (!run.notes().bead().note().isEmpty()) {
      page.wrapped("  ", 4, "note: " + VisibleText.of(run.notes().bead().note()));
    }
    return page.toString();
  }

  private static String head(RunRecord run, ZoneId zone) {
    return "Run "
        + run.id()
        + " of "
        + START.format(Instant.ofEpochMilli(run.startWallMillis()).atZone(zone))
        + ", "
        + Words.trainee(run.trainee())
        + ", "
        + Words.pass(PassKey.of(run))
        + ": "
        + Durations.words(run.lengthSeconds())
        + " of arc, "
        + Numbers.fixed(run.energyJoules() / 1_000, 1)
        + Numbers.GLUE
        + "kJ";
  }
}
