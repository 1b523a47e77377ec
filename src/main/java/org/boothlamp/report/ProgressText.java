package org.boothlamp.report;

/** Progress as text for people. A pure function. */
public final class ProgressText {

  private static final int DAY = 12;

  private final TextPage page;

  private ProgressText(TextPage page) {
    this.page = page;
  }

  /**
   * The whole page, lines ended by a line feed.
   *
   * @param width characters in a line, at least {@link TextReport#LEAST_WIDTH}
   */
  public static String render(Progress progress, int width, Colour colour) {
    TextPage page = new TextPage(Math.max(width, TextReport.LEAST_WIDTH), colour);
    new ProgressText(page).append(progress);
    return page.toString();
  }

  private void append(Progress progress) {
    page.wrapped(
        "", 0, "Progress, " + progress.span().words() + ", " + progress.span().zone() + " time");
    if (progress.trainees().isEmpty()) {
      page.wrapped("", 0, "No signed-in trainee welded a run.");
    } else {
      page.wrapped("", 0, "In window: green and amber time as a share of the judged time.");
      page.wrapped(
          "",
          0,
          "95 %: Wilson's interval of that share, each run one trial. Change over ten runs: slope of"
              + " a straight line through the runs, with its 95 % interval.");
    }
    progress.trainees().forEach(this::append);
    page.newLine().wrapped("", 0, TextReport.WHAT_IT_IS_NOT);
  }

  private void append(TraineeProgress trainee) {
    page.heading(
        trainee.trainee()
            + ": "
            + Numbers.counted(trainee.runs(), "run", "runs")
            + ", "
            + Durations.words(trainee.arcSeconds())
            + " of arc");
    trainee.passes().forEach(this::append);
  }

  private void append(PassProgress pass) {
    page.wrapped("", 2, Words.pass(pass.pass()));
    page.left("  day", DAY + 2).right("runs", 6).right("arc", 11).right("in window", 11);
    page.spaces(2).left("bar", LevelBar.WIDTH).newLine();
    for (ProgressDay day : pass.days()) {
      appendRow(day.day().toString(), day.figures());
    }
    appendRow("all", pass.total());
    page.wrapped("  ", 2, share(pass));
    if (pass.steady() != null) {
      page.wrapped("  ", 2, pass.steady().words() + ".");
    }
    page.newLine();
  }

  private void appendRow(String name, Figures figures) {
    page.text("  ").left(name, DAY).right(Integer.toString(figures.runs()), 6);
    page.right(Durations.words(figures.arcSeconds()), 11);
    page.right(Numbers.share(figures.insideShare()), 11).spaces(2);
    LevelBar.append(page, figures);
    page.newLine();
  }

  private static String share(PassProgress pass) {
    if (pass.interval() == null) {
      return "nothing was judged.";
    }
    return "in window "
        + Numbers.share(pass.total().insideShare())
        + ", 95 % from "
        + Numbers.share(pass.interval().low())
        + " to "
        + Numbers.share(pass.interval().high())
        + " ("
        + Numbers.counted(pass.judgedRuns(), "judged run", "judged runs")
        + "); "
        + trend(pass.trend());
  }

  private static String trend(Trend trend) {
    if (trend == null) {
      return "too few judged runs to say which way it goes.";
    }
    String change =
        Numbers.fixed(100 * trend.perTenRuns(), 0)
            + " ± "
            + Numbers.fixed(100 * trend.halfWidth(), 0)
            + " points over ten runs";
    return switch (trend.direction()) {
      case BETTER -> "getting better, " + change + ".";
      case WORSE -> "getting worse, " + change + ".";
      case CANNOT_TELL -> "no sure change, " + change + ".";
    };
  }
}
