package org.boothlamp.page;

import java.time.LocalDate;
import java.time.ZoneId;
import java.time.format.DateTimeParseException;
import java.util.List;
import org.boothlamp.report.Durations;
import org.boothlamp.report.Markup;
import org.boothlamp.report.RunRecord;
import org.boothlamp.report.RunSummary;
import org.boothlamp.report.ShiftRecords;
import org.boothlamp.report.ShiftReport;
import org.boothlamp.report.ShiftSpan;
import org.boothlamp.report.TimesOfDay;
import org.boothlamp.report.UntimedStart;

/** The runs of a day, the latest first. */
final class RunsView implements View {

  /** A page of more is slow to read for people too. */
  static final int MOST_RUNS = 400;

  private static final List<String> COLUMNS =
      List.of("time", "trainee", "weld", "length", "amps", "volts", "inside", "remarks");

  private final Layout layout;
  private final BoothRuns runs;
  private final Today today;
  private final ZoneId zone;

  RunsView(Layout layout, BoothRuns runs, Today today, ZoneId zone) {
    this.layout = layout;
    this.runs = runs;
    this.today = today;
    this.zone = zone;
  }

  @Override
  public String path() {
    return "/runs";
  }

  @Override
  public Right right() {
    return Right.SEE;
  }

  @Override
  public String menuKey() {
    return "page.runs";
  }

  @Override
  public Answer get(Request request) {
    LocalDate now = today.date();
    LocalDate day = day(request.query().get("day"), now);
    ShiftSpan span = ShiftSpan.days(day, day, zone);
    ShiftRecords records = runs.of(span);
    String title = layout.say(day.equals(now) ? "page.runs.today" : "page.runs.of", day);
    return layout.page(
        request,
        title,
        page -> {
          otherDays(page, day, now);
          if (records.runs().isEmpty()) {
            page.leaf("p", layout.say("page.runs.none"));
          } else {
            table(page, summaries(records, span), span);
          }
          for (UntimedStart start : records.untimed()) {
            page.leaf("h2", layout.say("page.runs.untimed"));
            table(page, summaries(start.records(), span), span);
          }
        });
  }

  private static List<RunSummary> summaries(ShiftRecords records, ShiftSpan span) {
    return ShiftReport.of(records, span, "", "").runs();
  }

  private static LocalDate day(String typed, LocalDate today) {
    if (typed == null) {
      return today;
    }
    try {
      return LocalDate.parse(typed);
    } catch (DateTimeParseException unreadable) {
      throw new PageException(400, "page.error.day");
    }
  }

  private void otherDays(Markup page, LocalDate day, LocalDate today) {
    page.open("p", "class", "days");
    page.leaf("a", layout.say("page.day.before"), "href", "/runs?day=" + day.minusDays(1));
    if (day.isBefore(today)) {
      page.text(" · ");
      page.leaf("a", layout.say("page.day.after"), "href", "/runs?day=" + day.plusDays(1));
    }
    page.close();
  }

  private void table(Markup page, List<RunSummary> all, ShiftSpan span) {
    page.leaf("p", layout.phrases().count("run", all.size()));
    if (all.size() > MOST_RUNS) {
      page.leaf("p", layout.say("page.runs.latest", Integer.toString(MOST_RUNS)));
    }
    page.open(
        "div",
        "class",
        "wide",
        "tabindex",
        "0",
        "role",
        "region",
        "aria-label",
        layout.say("page.runs"));
    page.open("table").open("thead").open("tr");
    for (String column : COLUMNS) {
      page.leaf("th", layout.say("page.column." + column), "scope", "col");
    }
    page.close().close().open("tbody");
    for (int k = all.size() - 1; k >= Math.max(0, all.size() - MOST_RUNS); k--) {
      row(page, all.get(k), span);
    }
    page.close().close().close();
  }

  private void row(Markup page, RunSummary summary, ShiftSpan span) {
    RunRecord run = summary.run();
    page.open("tr").open("th", "scope", "row");
    page.leaf("a", TimesOfDay.words(run.startWallMillis(), span), "href", "/runs/" + run.id());
    page.close();
    page.leaf("td", RunWords.trainee(layout, run), "class", "name");
    page.leaf("td", RunWords.weld(run), "class", "name");
    page.leaf("td", Durations.words(run.lengthSeconds()));
    page.leaf("td", RunWords.amps(run));
    page.leaf("td", RunWords.volts(run));
    page.leaf("td", RunWords.inside(layout, run));
    page.leaf("td", RunWords.remarks(layout, summary), "class", "name").close();
  }
}
