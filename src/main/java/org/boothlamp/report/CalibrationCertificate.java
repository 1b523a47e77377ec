package org.boothlamp.report;

import java.util.List;
import org.boothlamp.calibration.CalibrationPoint;
import org.boothlamp.calibration.MeasuredValue;
import org.boothlamp.calibration.UncertaintyBudget;
import org.boothlamp.calibration.UncertaintyLine;
import org.boothlamp.report.CalibrationWords.Fact;

/**
 * One calibration as a page to print and sign: a single HTML file that is well-formed XML too, with
 * its style and drawings inside, without script and without an address of anything outside. A pure
 * function.
 */
public final class CalibrationCertificate {

  private static final String POLICY = "default-src 'none'; style-src 'unsafe-inline'";

  private final CalibrationSheet sheet;
  private final CalibrationWords words;
  private final Markup page = new Markup();

  private CalibrationCertificate(CalibrationSheet sheet) {
    this.sheet = sheet;
    this.words = new CalibrationWords(sheet);
  }

  /** The whole file. */
  public static String render(CalibrationSheet sheet) {
    return new CalibrationCertificate(sheet).render();
  }

  private String render() {
    page.verbatim("<!DOCTYPE html>\n").open("html", "lang", "en");
    head();
    page.open("body").open("main");
    title();
    warnings();
    facts();
    points();
    plots();
    fit();
    budget();
    verdict();
    checks();
    page.close();
    signatures();
    cautions();
    return page.close().close().toString();
  }

  private void head() {
    page.open("head").empty("meta", "charset", "utf-8");
    page.empty("meta", "http-equiv", "Content-Security-Policy", "content", POLICY);
    page.empty("meta", "name", "viewport", "content", "width=device-width");
    page.leaf("title", words.title());
    page.open("style").verbatim("\n" + PageStyle.sheet()).close();
    page.close();
  }

  private void title() {
    page.open("header").open("div");
    page.leaf("h1", words.title());
    page.leaf("p", words.channelTitle(), "class", "sub");
    page.close();
    page.leaf("p", words.headline(), "class", "box stamp " + statusStyle());
    page.close();
  }

  private String statusStyle() {
    return switch (sheet.status()) {
      case ACCEPTED -> sheet.isOverdue() ? "doubt" : "good";
      case UNDER_WAY -> "plain";
      case REFUSED, ABANDONED, WITHDRAWN -> "bad";
    };
  }

  private void warnings() {
    if (sheet.record().withdrawal() != null) {
      page.leaf("p", words.withdrawal(), "class", "box bad");
    }
    List<String> disagreements = sheet.disagreements();
    if (!disagreements.isEmpty()) {
      page.open("div", "class", "box doubt");
      page.leaf("strong", "Record and recomputation disagree.");
      page.leaf("p", Disagreements.ADVICE);
      list(disagreements);
      page.close();
    }
  }

  private void facts() {
    page.open("div", "class", "pair");
    page.open("section").leaf("h2", "Calibration");
    facts(words.head());
    page.close().open("section").leaf("h2", "Reference meter");
    facts(words.meter());
    page.close().close();
  }

  private void facts(List<Fact> facts) {
    page.open("dl");
    for (Fact fact : facts) {
      page.leaf("dt", fact.label()).leaf("dd", fact.words());
    }
    page.close();
  }

  private void list(List<String> items) {
    page.open("ul");
    items.forEach(item -> page.leaf("li", item));
    page.close();
  }

  private void points() {
    page.leaf("h2", "Points, " + sheet.unit());
    if (sheet.points().isEmpty()) {
      page.leaf("p", "None was taken.");
      return;
    }
    page.open("table").open("thead").open("tr");
    for (String name : List.of("#", "level")) {
      page.leaf("th", name);
    }
    page.leaf("th", "direction", "class", "word");
    for (String name : List.of("sensor", "scatter", "drift", "reference", "line", "residual")) {
      page.leaf("th", name);
    }
    page.leaf("th", "remark", "class", "word last").close().close().open("tbody");
    sheet.points().forEach(this::point);
    page.close().close();
  }

  private void point(SheetPoint row) {
    CalibrationPoint point = row.point();
    double detail = sheet.pointDetail();
    double step = Math.abs(sheet.head().nominal().unitsPerCount());
    page.open("tr");
    cell(Integer.toString(row.index()));
    cell(MeasuredValue.figure(point.level()));
    page.leaf("td", CalibrationWords.direction(point.direction()), "class", "word");
    cell(MeasuredValue.value(row.nominal(), detail));
    cell(MeasuredValue.value(step * point.standardDeviationCounts(), detail));
    cell(CalibrationWords.signed(step * point.driftCounts(), detail));
    cell(point.isMeasured() ? MeasuredValue.value(point.reference(), detail) : "none");
    cell(MeasuredValue.value(row.fitted(), detail));
    cell(point.isDiscarded() ? "not used" : CalibrationWords.signed(row.residual(), detail));
    page.leaf("td", remark(row), "class", "free");
    page.close();
  }

  private void cell(String text) {
    page.leaf("td", text);
  }

  private static String remark(SheetPoint row) {
    if (row.point().isDiscarded()) {
      return "thrown away: " + row.point().discardReason();
    }
    return row.isOutlier() ? "outlier" : "";
  }

  private void plots() {
    CalibrationPlots plots = new CalibrationPlots(sheet, page);
    if (plots.isEmpty()) {
      return;
    }
    page.open("div", "class", "pair");
    if (sheet.result() != null) {
      page.open("figure");
      plots.residuals();
      page.leaf(
              "figcaption",
              "Residuals: ▲ rising, ▽ falling, × thrown away, ringed: outlier;"
                  + " shaded: ± U of a reading; solid line: class limit.")
          .close();
    }
    page.open("figure");
    plots.errors();
    page.leaf(
            "figcaption",
            "Errors: ○ as found, ■ as left; solid line: class limit, dashed:"
                + " limit less the guard band.")
        .close();
    page.close();
  }

  private void fit() {
    if (sheet.result() == null) {
      return;
    }
    page.open("section").leaf("h2", "Fit: reference = offset + gain × nominal reading");
    page.open("div", "class", "pair");
    List<Fact> facts = words.fit();
    facts(facts.subList(0, facts.size() / 2));
    facts(facts.subList(facts.size() / 2, facts.size()));
    page.close().close();
  }

  private void budget() {
    List<UncertaintyBudget> budgets = sheet.budgets();
    if (budgets.isEmpty()) {
      return;
    }
    page.open("section", "class", "whole wide");
    page.leaf("h2", "Uncertainty budget, " + sheet.unit());
    page.open("table").open("thead").open("tr");
    for (String name : List.of("influence", "distribution")) {
      page.leaf("th", name, "class", "word", "rowspan", "2");
    }
    for (String name : List.of("divisor", "sensitivity")) {
      page.leaf("th", name, "rowspan", "2");
    }
    budgets.forEach(
        budget -> page.leaf("th", "at " + words.amount(budget.reading()), "colspan", "2"));
    page.leaf("th", "ν", "rowspan", "2").close().open("tr");
    budgets.forEach(budget -> page.leaf("th", "value").leaf("th", "u"));
    page.close().close().open("tbody");
    for (int i = 0; i < budgets.get(0).lines().size(); i++) {
      budgetLine(budgets, i);
    }
    budgetSums(budgets);
    page.close().close();
    page.leaf(
        "p",
        "value: standard deviation where normal, half width where not; u: standard uncertainty; ν:"
            + " degrees of freedom; k: coverage factor. "
            + words.statement()
            + ".");
    page.close();
  }

  private void budgetLine(List<UncertaintyBudget> budgets, int index) {
    UncertaintyLine first = budgets.get(0).lines().get(index);
    page.open("tr").leaf("td", first.name(), "class", "word");
    page.leaf("td", Budgets.distribution(first.distribution()), "class", "word");
    cell(Numbers.fixed(first.divisor(), 3));
    cell(MeasuredValue.figure(first.sensitivity()));
    for (UncertaintyBudget budget : budgets) {
      cell(MeasuredValue.uncertainty(budget.lines().get(index).value()));
      cell(MeasuredValue.uncertainty(budget.lines().get(index).standardUncertainty()));
    }
    cell(Budgets.freedom(first.degreesOfFreedom()));
    page.close();
  }

  private void budgetSums(List<UncertaintyBudget> budgets) {
    page.open("tr", "class", "sum");
    page.leaf("td", "combined, with effective ν", "class", "word", "colspan", "4");
    for (UncertaintyBudget budget : budgets) {
      cell("ν = " + Budgets.freedom(budget.effectiveDegreesOfFreedom()));
      cell(MeasuredValue.uncertainty(budget.combined()));
    }
    page.leaf("td", "").close().open("tr", "class", "sum");
    page.leaf("td", "expanded uncertainty U", "class", "word", "colspan", "4");
    for (UncertaintyBudget budget : budgets) {
      cell("k = " + Numbers.fixed(budget.coverageFactor(), 2));
      cell(MeasuredValue.uncertainty(budget.expanded()));
    }
    page.leaf("td", "").close();
  }

  private void verdict() {
    page.open("section", "class", "box " + statusStyle());
    page.leaf("strong", "Verdict: " + words.headline());
    facts(words.verdict());
    if (sheet.record().isAccepted()) {
      facts(
          List.of(
              new Fact("Scale signed", words.exactScale(sheet.record().finish().scale())),
              new Fact("Next due", sheet.record().finish().nextDue().toString())));
    }
    List<String> objections = sheet.objections();
    if (!objections.isEmpty()) {
      list(objections);
    }
    page.close();
  }

  private void checks() {
    if (sheet.chart().checks().isEmpty()) {
      return;
    }
    page.open("section").leaf("h2", "One-point checks, the last " + sheet.chart().checks().size());
    page.open("figure");
    ControlPlot.draw(sheet, page);
    page.leaf(
            "figcaption",
            "○ passed, ringed × failed; solid line: limit of each check (± U);"
                + " dash-dotted: mean of the run, dashed: its control limits (3 standard deviations)."
                + " "
                + String.join(" ", CalibrationWords.control(sheet.chart())))
        .close();
    page.close();
  }

  private void signatures() {
    page.open("div", "class", "sign");
    page.leaf("div", "technician " + VisibleText.of(sheet.head().technicianCode()));
    page.leaf("div", "responsible for the workshop");
    page.leaf("div", "date");
    page.close();
  }

  private void cautions() {
    page.open("footer");
    CalibrationWords.CAUTIONS.forEach(caution -> page.leaf("p", caution));
    page.leaf(
        "p",
        "Printed "
            + sheet.today()
            + " from the booth log, which holds the record: a"
            + " later withdrawal does not show on this paper. Times are "
            + sheet.zoneName()
            + " time.");
    page.close();
  }
}
