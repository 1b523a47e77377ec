package org.boothlamp.report;

import java.time.LocalDate;
import java.time.ZonedDateTime;
import java.util.ArrayList;
import java.util.List;
import org.boothlamp.procedure.Quantity;
import org.boothlamp.report.TextPage.Style;
import org.boothlamp.signal.Polarity;
import org.boothlamp.words.Units;

/**
 * A shift as text for people: the class at a glance, each trainee by procedure, the runs one by
 * one, and what the numbers cannot be trusted for. A pure function.
 */
public final class TextReport {

  /** Narrowest page; a narrower width is taken as this one. */
  public static final int LEAST_WIDTH = 80;

  static final String WHAT_IT_IS_NOT =
      "The lamp is no safety device, and nothing here accepts a weld.";

  private static final String HEAT_INPUT =
      "Heat input is k times arc energy over bead length, k by the process (EN 1011-1).";

  private static final int TRAINEE = 13;

  /** Width of a time of day. */
  private static final int CLOCK = 8;

  private final ShiftReport report;
  private final Glance glance;
  private final TextPage page;
  private final Units units;

  private TextReport(ShiftReport report, Glance glance, int width, Colour colour, Units units) {
    this.report = report;
    this.glance = glance;
    this.units = units;
    this.page = new TextPage(Math.max(width, LEAST_WIDTH), colour);
  }

  /**
   * The whole report, lines ended by a line feed.
   *
   * @param width characters in a line, at least {@link #LEAST_WIDTH}
   */
  public static String render(ShiftReport report, int width, Colour colour) {
    return render(report, null, width, colour, Units.METRIC);
  }

  /**
   * The same, with what to look at, and in units of the reader's.
   *
   * @param glance null leaves that out
   */
  public static String render(
      ShiftReport report, Glance glance, int width, Colour colour, Units units) {
    return new TextReport(report, glance, width, colour, units).render();
  }

  private String render() {
    appendHeader();
    if (!report.trainees().isEmpty()) {
      appendGlance();
      if (glance != null) {
        new GlanceText(glance, page).append();
      }
    }
    if (!report.allRuns().isEmpty()) {
      appendPasses();
    }
    if (!report.runs().isEmpty()) {
      appendRuns();
    }
    report.untimed().stream().filter(start -> !start.runs().isEmpty()).forEach(this::appendUntimed);
    appendDoubts();
    page.newLine().wrapped("", 0, WHAT_IT_IS_NOT);
    return page.toString();
  }

  private void appendHeader() {
    if (!report.title().isEmpty()) {
      page.nameLine(report.title());
    }
    String booth = report.booth().isEmpty() ? "All booths" : "Booth " + report.booth();
    page.wrapped(
        "", 0, booth + ", " + report.span().words() + ", " + report.span().zone() + " time");
    CalibrationReviewWords.head(report).forEach(line -> page.wrapped("", 2, line));
    if (report.allRuns().isEmpty()) {
      page.wrapped("", 0, "No run was welded.");
      return;
    }
    page.wrapped("", 0, headline(report.total()));
  }

  private String headline(Figures total) {
    return Numbers.counted(report.traineeCount(), "trainee", "trainees")
        + ", "
        + Numbers.counted(total.runs(), "run", "runs")
        + ", "
        + Durations.words(total.arcSeconds())
        + " of arc, "
        + (total.judgedSeconds() > 0 ? judged(total) : "nothing judged");
  }

  private static String judged(Figures total) {
    return Durations.words(total.judgedSeconds())
        + " judged, "
        + Numbers.share(total.insideShare())
        + " of it in the window";
  }

  private void appendGlance() {
    page.heading("THE CLASS AT A GLANCE");
    page.wrapped("", 0, "In window: green and amber time as a share of the judged time.");
    page.wrapped(
        "", 0, "Bar of the judged time: = green, ~ amber (near a limit), ! red (outside).");
    page.newLine();
    page.left("trainee", TRAINEE).right("runs", 6).right("arc", 11).right("in window", 11);
    page.spaces(2).left("bar", LevelBar.WIDTH);
    page.right("arc-outs", 9).right("touches", 8).right("stuck", 6).newLine();
    for (TraineeSummary trainee : report.trainees()) {
      appendGlance(
          Words.trainee(trainee.trainee()), trainee.total(), trainee.touches(), trainee.stuck());
    }
    if (report.trainees().size() > 1) {
      appendGlance("all", report.total(), report.touchCount(), report.stuckCount());
    }
  }

  private void appendGlance(String name, Figures figures, int touches, int stuck) {
    if (name.length() > TRAINEE) {
      page.nameLine(name).spaces(TRAINEE);
    } else {
      page.left(name, TRAINEE);
    }
    page.right(Integer.toString(figures.runs()), 6);
    page.right(Durations.words(figures.arcSeconds()), 11);
    page.right(Numbers.share(figures.insideShare()), 11).spaces(2);
    LevelBar.append(page, figures);
    page.right(Integer.toString(figures.arcOuts()), 9);
    page.right(Integer.toString(touches), 8).right(Integer.toString(stuck), 6).newLine();
  }

  private void appendPasses() {
    page.heading("BY TRAINEE AND PROCEDURE");
    page.wrapped("", 0, "Means are over the arc time of the runs, longer runs counting for more.");
    if (report.allRuns().stream().anyMatch(summary -> summary.run().polarity() == Polarity.AC)) {
      page.wrapped("", 0, "Amps and volts of AC runs are RMS.");
    }
    for (TraineeSummary trainee : report.trainees()) {
      for (PassSummary pass : trainee.passes()) {
        appendPass(trainee, pass);
      }
    }
  }

  private void appendPass(TraineeSummary trainee, PassSummary summary) {
    Figures figures = summary.figures();
    page.newLine();
    appendName(trainee.trainee(), summary.pass());
    page.wrapped("  ", 4, sums(figures) + "; " + means(figures, summary.pass()));
    page.wrapped("  ", 4, levels(figures));
    List<String> excursions = new ArrayList<>();
    Words.addExcursions(excursions, figures.excursions());
    if (!excursions.isEmpty()) {
      page.wrapped("  ", 4, "outside: " + String.join(", ", excursions));
    }
  }

  private void appendName(String trainee, PassKey pass) {
    page.wrapped("", 2, Words.trainee(trainee) + ": " + Words.pass(pass));
  }

  private static String sums(Figures figures) {
    return Numbers.counted(figures.runs(), "run", "runs")
        + ", "
        + Durations.words(figures.arcSeconds())
        + " of arc, "
        + Numbers.share(figures.insideShare())
        + (figures.judgedSeconds() > 0 ? " in window" : "");
  }

  private static String levels(Figures figures) {
    return Durations.words(figures.greenSeconds())
        + " green, "
        + Durations.words(figures.amberSeconds())
        + " amber, "
        + Durations.words(figures.redSeconds())
        + " red, "
        + Durations.words(figures.settlingSeconds() + figures.faultSeconds())
        + " not judged; "
        + Numbers.counted(figures.arcOuts(), "arc-out", "arc-outs");
  }

  private static String means(Figures figures, PassKey pass) {
    return "mean "
        + mean(figures.meanAmps(), pass, Quantity.AMPS)
        + ", "
        + mean(figures.meanVolts(), pass, Quantity.VOLTS);
  }

  private static String mean(double value, PassKey pass, Quantity quantity) {
    String side = Words.side(value, pass.window(quantity));
    return Numbers.fixed(value, 1)
        + Numbers.GLUE
        + quantity.unit()
        + (side.isEmpty() ? "" : " (" + side + ")");
  }

  private void appendRuns() {
    page.heading("RUNS, ONE BY ONE");
    if (report.runs().stream().anyMatch(summary -> summary.run().heatInput() != null)) {
      page.wrapped("", 0, HEAT_INPUT);
    }
    RunRow row = RunRow.numbered(page, saidElsewhere(), units);
    row.appendColumnNames("run     start");
    LocalDate day = null;
    PassKey pass = null;
    String trainee = null;
    for (RunSummary summary : report.runs()) {
      RunRecord run = summary.run();
      ZonedDateTime start = report.span().local(run.startWallMillis());
      PassKey runPass = pass != null && pass.isOf(run) ? pass : PassKey.of(run);
      boolean newDay = !start.toLocalDate().equals(day);
      if (newDay || !run.trainee().equals(trainee) || runPass != pass) {
        appendRunsOf(newDay ? start.toLocalDate() : null, run.trainee(), runPass);
      }
      day = start.toLocalDate();
      pass = runPass;
      trainee = run.trainee();
      row.append(label(run, TimesOfDay.clock(start)), summary);
    }
  }

  /** What all runs have is said once, among the doubts. */
  private List<RunFlag> saidElsewhere() {
    boolean allUncalibrated = report.allRuns().stream().allMatch(r -> r.has(RunFlag.UNCALIBRATED));
    return allUncalibrated
        ? List.of(RunFlag.NO_TIME, RunFlag.UNCALIBRATED)
        : List.of(RunFlag.NO_TIME);
  }

  private void appendUntimed(UntimedSummary start) {
    page.heading("TIME OF DAY NOT KNOWN: START " + start.number() + " OF THE MONITOR");
    page.wrapped(
        "",
        0,
        "The clock was never set in it. Runs are in order; their times count from the first"
            + " sample.");
    RunRow row = RunRow.numbered(page, saidElsewhere(), units);
    row.appendColumnNames("run     after");
    PassKey pass = null;
    String trainee = null;
    for (RunSummary summary : start.runs()) {
      RunRecord run = summary.run();
      PassKey runPass = pass != null && pass.isOf(run) ? pass : PassKey.of(run);
      if (!run.trainee().equals(trainee) || runPass != pass) {
        appendRunsOf(null, run.trainee(), runPass);
      }
      pass = runPass;
      trainee = run.trainee();
      row.append(label(run, Durations.words(run.startSeconds())), summary);
    }
  }

  /** The number of a run, and when it began. */
  private static String label(RunRecord run, String start) {
    return run.id() + "  " + " ".repeat(Math.max(0, CLOCK - start.length())) + start;
  }

  private void appendRunsOf(LocalDate newDay, String trainee, PassKey pass) {
    page.newLine();
    if (newDay != null && report.span().hasSeveralDays()) {
      page.styled(newDay.toString(), Style.HEADING).newLine();
    }
    appendName(trainee, pass);
  }

  private void appendDoubts() {
    List<String> doubts = new ArrayList<>(Doubts.of(report));
    List<String> others = new ArrayList<>();
    for (EventSummary events : EventSummary.of(report.events())) {
      boolean doubt = EventWords.isDoubt(events.what());
      (doubt ? doubts : others).add(EventLine.of(events, report.span()));
    }
    for (UntimedSummary start : report.untimed()) {
      addUntimed(start, doubts, others);
    }
    appendDoubts(doubts, others);
  }

  private static void addUntimed(UntimedSummary start, List<String> doubts, List<String> others) {
    for (EventSummary events : EventSummary.of(start.events())) {
      boolean doubt = EventWords.isDoubt(events.what());
      (doubt ? doubts : others).add(EventLine.untimed(events, start.number()));
    }
  }

  private void appendDoubts(List<String> doubts, List<String> others) {
    page.heading("WHAT THESE NUMBERS CANNOT BE TRUSTED FOR");
    if (doubts.isEmpty()) {
      page.wrapped("", 0, "Nothing was noticed that would put them in doubt.");
    }
    doubts.forEach(doubt -> page.wrapped("- ", 2, doubt));
    if (!others.isEmpty()) {
      page.heading("WHAT ELSE HAPPENED");
      others.forEach(event -> page.wrapped("- ", 2, event));
    }
  }
}
