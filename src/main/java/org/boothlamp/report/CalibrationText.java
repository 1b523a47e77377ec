package org.boothlamp.report;

import java.util.List;
import java.util.function.ToDoubleFunction;
import org.boothlamp.calibration.CalibrationPoint;
import org.boothlamp.calibration.MeasuredValue;
import org.boothlamp.calibration.UncertaintyBudget;
import org.boothlamp.calibration.UncertaintyLine;
import org.boothlamp.report.CalibrationWords.Fact;
import org.boothlamp.report.TextPage.Style;

/** One calibration as text for people, from head to verdict. A pure function. */
public final class CalibrationText {

  private static final int LABEL = 18;
  private static final int WIDE_LABEL = 30;

  private final CalibrationSheet sheet;
  private final CalibrationWords words;
  private final TextPage page;

  private CalibrationText(CalibrationSheet sheet, int width, Colour colour) {
    this.sheet = sheet;
    this.words = new CalibrationWords(sheet);
    this.page = new TextPage(Math.max(width, TextReport.LEAST_WIDTH), colour);
  }

  /**
   * The whole record, lines ended by a line feed.
   *
   * @param width characters in a line, at least {@link TextReport#LEAST_WIDTH}
   */
  public static String render(CalibrationSheet sheet, int width, Colour colour) {
    return new CalibrationText(sheet, width, colour).render();
  }

  private String render() {
    appendHead();
    appendPoints();
    if (sheet.result() != null) {
      page.heading("FIT: reference = offset + gain x nominal reading");
      words.fit().forEach(fact -> append(fact, WIDE_LABEL));
    }
    appendBudget();
    appendVerdict();
    if (!sheet.chart().checks().isEmpty()) {
      page.heading("ONE-POINT CHECKS");
      ControlChartText.append(page, sheet.chart(), sheet::local);
    }
    page.newLine();
    CalibrationWords.CAUTIONS.forEach(caution -> page.wrapped("", 0, caution));
    return page.toString();
  }

  private void appendHead() {
    page.nameLine(words.title());
    page.line(words.channelTitle());
    page.styled(words.headline(), statusStyle()).newLine();
    if (sheet.record().withdrawal() != null) {
      page.wrapped("", 0, words.withdrawal());
    }
    page.newLine();
    words.head().forEach(fact -> append(fact, LABEL));
    page.heading("REFERENCE METER");
    words.meter().forEach(fact -> append(fact, LABEL));
  }

  private Style statusStyle() {
    return switch (sheet.status()) {
      case ACCEPTED -> sheet.isOverdue() ? Style.AMBER : Style.GREEN;
      case UNDER_WAY -> Style.HEADING;
      case REFUSED, ABANDONED, WITHDRAWN -> Style.RED;
    };
  }

  private void append(Fact fact, int label) {
    page.wrapped(
        fact.label() + " ".repeat(Math.max(1, label - fact.label().length())), label, fact.words());
  }

  private void appendPoints() {
    page.heading("POINTS, " + sheet.unit());
    if (sheet.points().isEmpty()) {
      page.line("None was taken.");
      return;
    }
    page.right("#", 3).right("level", 9).spaces(2).left("way", 8).right("sensor", 10);
    page.right("scatter", 9).right("drift", 9).right("reference", 11).right("residual", 10);
    page.newLine();
    sheet.points().forEach(this::appendPoint);
    page.wrapped(
        "",
        0,
        "Sensor: mean by the nominal scale; scatter: standard deviation of its single"
            + " readings; residual: reference less the line.");
  }

  private void appendPoint(SheetPoint row) {
    CalibrationPoint point = row.point();
    double detail = sheet.pointDetail();
    double step = Math.abs(sheet.head().nominal().unitsPerCount());
    page.right(Integer.toString(row.index()), 3).right(MeasuredValue.figure(point.level()), 9);
    page.spaces(2).left(CalibrationWords.direction(point.direction()), 8);
    page.right(MeasuredValue.value(row.nominal(), detail), 10);
    page.right(MeasuredValue.value(step * point.standardDeviationCounts(), detail), 9);
    page.right(CalibrationWords.signed(step * point.driftCounts(), detail), 9);
    page.right(point.isMeasured() ? MeasuredValue.value(point.reference(), detail) : "none", 11);
    page.right(point.isDiscarded() ? "-" : CalibrationWords.signed(row.residual(), detail), 10);
    page.newLine();
    if (point.isDiscarded()) {
      page.wrapped("     ", 5, "thrown away: " + VisibleText.of(point.discardReason()));
    }
    if (row.isOutlier()) {
      page.wrapped("     ", 5, "outlier: chance would hardly put any of the points that far off");
    }
  }

  private void appendBudget() {
    List<UncertaintyBudget> budgets = sheet.budgets();
    if (budgets.isEmpty()) {
      return;
    }
    page.heading("UNCERTAINTY BUDGET: standard uncertainties, " + sheet.unit());
    page.left("at a reading of", 42);
    budgets.forEach(budget -> page.right(MeasuredValue.figure(budget.reading()), 10));
    page.right("freedom", 8).newLine();
    for (int i = 0; i < budgets.get(0).lines().size(); i++) {
      appendBudgetLine(budgets, i);
    }
    appendSum("combined", budgets, UncertaintyBudget::combined);
    page.left("degrees of freedom", 42);
    budgets.forEach(b -> page.right(freedom(b.effectiveDegreesOfFreedom()), 10));
    page.newLine().left("coverage factor k", 42);
    budgets.forEach(b -> page.right(Numbers.fixed(b.coverageFactor(), 2), 10));
    page.newLine();
    appendSum("expanded uncertainty U", budgets, UncertaintyBudget::expanded);
    page.wrapped("", 0, words.statement() + ".");
  }

  private void appendBudgetLine(List<UncertaintyBudget> budgets, int index) {
    UncertaintyLine first = budgets.get(0).lines().get(index);
    page.left(first.name(), 30).left(Budgets.distribution(first.distribution()), 12);
    for (UncertaintyBudget budget : budgets) {
      page.right(MeasuredValue.uncertainty(budget.lines().get(index).standardUncertainty()), 10);
    }
    page.right(freedom(first.degreesOfFreedom()), 8).newLine();
  }

  private void appendSum(
      String name, List<UncertaintyBudget> budgets, ToDoubleFunction<UncertaintyBudget> value) {
    page.left(name, 42);
    budgets.forEach(b -> page.right(MeasuredValue.uncertainty(value.applyAsDouble(b)), 10));
    page.newLine();
  }

  private static String freedom(double freedom) {
    return Budgets.freedom(freedom);
  }

  private void appendVerdict() {
    page.heading("VERDICT");
    words.verdict().forEach(fact -> append(fact, WIDE_LABEL));
    if (sheet.record().isAccepted()) {
      append(
          new Fact("Scale signed", words.exactScale(sheet.record().finish().scale())), WIDE_LABEL);
      append(new Fact("Next due", sheet.record().finish().nextDue().toString()), WIDE_LABEL);
    }
    sheet.objections().forEach(reason -> page.wrapped("- ", 2, VisibleText.of(reason)));
    List<String> disagreements = sheet.disagreements();
    if (!disagreements.isEmpty()) {
      page.heading("RECORD AND RECOMPUTATION DISAGREE");
      page.wrapped("", 0, Disagreements.ADVICE);
      disagreements.forEach(words -> page.wrapped("- ", 2, VisibleText.of(words)));
    }
  }
}
