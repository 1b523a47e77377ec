package org.boothlamp.page;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;
import org.boothlamp.procedure.Window;
import org.boothlamp.report.Durations;
import org.boothlamp.report.Markup;
import org.boothlamp.report.Numbers;
import org.boothlamp.report.RunRecord;
import org.boothlamp.report.RunSummary;
import org.boothlamp.report.ShiftSpan;
import org.boothlamp.report.TimesOfDay;

/** One run: its figures, and what other parts of the program have to add. */
final class RunView implements View {

  private final Layout layout;
  private final BoothRuns runs;
  private final ZoneId zone;
  private final List<RunPart> parts;

  RunView(Layout layout, BoothRuns runs, ZoneId zone, List<RunPart> parts) {
    this.layout = layout;
    this.runs = runs;
    this.zone = zone;
    this.parts = List.copyOf(parts);
  }

  @Override
  public String path() {
    return "/runs/";
  }

  @Override
  public Right right() {
    return Right.SEE;
  }

  @Override
  public Answer get(Request request) {
    String number = request.rest(this);
    if (!number.matches("[0-9]{1,15}")) {
      throw new PageException(404, "page.error.none");
    }
    RunSummary found = runs.run(Long.parseLong(number), zone);
    if (found == null) {
      throw new PageException(404, "page.error.run", number);
    }
    return layout.page(request, layout.say("page.run", number), page -> body(page, found, request));
  }

  private void body(Markup page, RunSummary summary, Request request) {
    RunRecord run = summary.run();
    ShiftSpan day = new ShiftSpan(run.startWallMillis(), run.startWallMillis() + 1, zone);
    LocalDate date = Instant.ofEpochMilli(run.startWallMillis()).atZone(zone).toLocalDate();
    page.open("p").leaf("a", layout.say("page.runs.of", date), "href", "/runs?day=" + date).close();
    page.open("dl", "class", "figures");
    figure(page, "time", date + " " + TimesOfDay.words(run.startWallMillis(), day));
    figure(page, "trainee", RunWords.trainee(layout, run));
    figure(page, "weld", RunWords.weld(run));
    figure(page, "length", Durations.words(run.lengthSeconds()));
    figure(page, "amps", RunWords.amps(run) + window(run, "amps"));
    figure(page, "volts", RunWords.volts(run) + window(run, "volts"));
    figure(page, "energy", Numbers.fixed(run.energyJoules() / 1_000, 1) + " kJ");
    figure(page, "inside", RunWords.inside(layout, run));
    figure(page, "left", RunWords.excursions(layout, summary));
    figure(page, "technique", RunWords.technique(layout, run));
    figure(page, "doubt", RunWords.flags(layout, summary));
    page.close();
    parts.forEach(part -> part.append(page, run, request));
  }

  private void figure(Markup page, String column, String value) {
    if (!value.isEmpty()) {
      page.leaf("dt", layout.say("page.column." + column)).leaf("dd", value);
    }
  }

  private static String window(RunRecord run, String key) {
    for (Window window : run.windows()) {
      if (window.quantity().key().equals(key)) {
        return " (" + WindowWords.of(window) + ")";
      }
    }
    return "";
  }
}
