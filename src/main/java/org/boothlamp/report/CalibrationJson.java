package org.boothlamp.report;

import java.io.IOException;
import java.io.Writer;
import java.time.format.DateTimeFormatter;
import java.util.Locale;
import org.boothlamp.calibration.CalibrationCheck;
import org.boothlamp.calibration.CalibrationFinish;
import org.boothlamp.calibration.CalibrationPoint;
import org.boothlamp.calibration.CalibrationResult;
import org.boothlamp.calibration.Conformity;
import org.boothlamp.calibration.ControlChart;
import org.boothlamp.calibration.ControlRule;
import org.boothlamp.calibration.LackOfFit;
import org.boothlamp.calibration.PointResidual;
import org.boothlamp.calibration.ReferenceMeter;
import org.boothlamp.calibration.Refusal;
import org.boothlamp.calibration.StraightLine;
import org.boothlamp.calibration.UncertaintyBudget;
import org.boothlamp.calibration.UncertaintyLine;
import org.boothlamp.calibration.Withdrawal;
import org.boothlamp.signal.ChannelScale;

/**
 * One calibration as JSON lines for programs: {@code calibration}, {@code meter}, a {@code point}
 * each, {@code fit}, {@code budget} and its {@code budget-line}s at three readings, {@code
 * verdict}, {@code refusal}s, {@code finish}, {@code withdrawal}, {@code disagreement}s, {@code
 * check}s and {@code control-chart}. Names end in {@code _amps} or {@code _volts} by the channel;
 * numbers have all their digits; what is not known is null.
 */
public final class CalibrationJson {

  private static final DateTimeFormatter TIME = DateTimeFormatter.ISO_OFFSET_DATE_TIME;

  private final CalibrationSheet sheet;
  private final JsonLines lines;
  private final String unit;

  private CalibrationJson(CalibrationSheet sheet, JsonLines lines) {
    this.sheet = sheet;
    this.lines = lines;
    this.unit = CalibrationCsv.unitSuffix(sheet.record().channel());
  }

  /**
   * Writes the record and flushes the writer, but leaves it open.
   *
   * @throws IOException if the writer does
   */
  public static void write(CalibrationSheet sheet, Writer writer) throws IOException {
    JsonLines lines = new JsonLines(writer);
    new CalibrationJson(sheet, lines).writeAll();
    lines.flush();
  }

  private void writeAll() throws IOException {
    writeHead();
    writeMeter();
    for (SheetPoint point : sheet.points()) {
      writePoint(point);
    }
    if (sheet.result() != null) {
      writeFit(sheet.result());
    }
    for (UncertaintyBudget budget : sheet.budgets()) {
      writeBudget(budget);
    }
    writeVerdict();
    writeEnd();
    writeChecks();
  }

  private JsonLines start(String kind) throws IOException {
    return lines.start(kind).count("number", sheet.record().number());
  }

  private void inUnit(String name, double value) throws IOException {
    lines.exact(name + unit, value);
  }

  private String time(long wallMillis) {
    return TIME.format(sheet.local(wallMillis));
  }

  private void writeHead() throws IOException {
    start("calibration").text("booth", sheet.head().booth());
    lines.text("channel", sheet.record().channel().word());
    lines.text("status", sheet.status().words()).truth("overdue", sheet.isOverdue());
    lines.text("date", sheet.head().date().toString());
    lines.text("started", time(sheet.head().startedWallMillis()));
    lines.text("technician", sheet.head().technicianCode());
    inUnit("full_scale", sheet.head().fullScale());
    writeScale("nominal_", sheet.head().nominal());
    writeScale("in_use_before_", sheet.head().inUse());
    lines.count("in_use_before_number", sheet.head().inUseNumber()).end();
  }

  private void writeScale(String name, ChannelScale scale) throws IOException {
    lines.exact(name + unit.substring(1) + "_per_count", scale.unitsPerCount());
    lines.exact(name + "zero_count", scale.zeroCount());
  }

  private void writeMeter() throws IOException {
    ReferenceMeter meter = sheet.head().meter();
    start("meter").text("make", meter.make() == null ? "" : meter.make());
    lines.text("serial_number", meter.serialNumber());
    lines.text("certificate_number", meter.certificateNumber());
    lines.text("certificate_date", meter.certificateDate().toString());
    lines.exact("accuracy_percent_of_reading", meter.accuracyPercentOfReading());
    lines.exact("accuracy_counts", meter.accuracyCounts());
    inUnit("resolution", meter.resolution());
    lines.end();
  }

  private void writePoint(SheetPoint row) throws IOException {
    CalibrationPoint point = row.point();
    start("point").count("index", row.index());
    inUnit("level", point.level());
    lines.text("direction", CalibrationWords.direction(point.direction()));
    lines.exact("mean_counts", point.meanCounts());
    lines.exact("standard_deviation_counts", point.standardDeviationCounts());
    lines.count("readings", point.readings()).exact("drift_counts", point.driftCounts());
    inUnit("nominal", row.nominal());
    inUnit("reference", point.reference());
    inUnit("fitted", row.fitted());
    inUnit("residual", row.residual());
    inUnit("as_found_error", row.asFoundError());
    inUnit("as_left_error", row.asLeftError());
    PointResidual fit = row.fit();
    lines.exact("studentized", fit == null ? Double.NaN : fit.studentized());
    lines.truth("outlier", row.isOutlier()).truth("discarded", point.isDiscarded());
    lines.text("discard_reason", point.isDiscarded() ? point.discardReason() : "").end();
  }

  private void writeFit(CalibrationResult result) throws IOException {
    StraightLine line = result.line();
    LackOfFit lack = result.lackOfFit();
    start("fit");
    inUnit("offset", line.offset());
    inUnit("offset_standard_uncertainty", line.offsetStandardUncertainty());
    lines.exact("gain", line.gain());
    lines.exact("gain_standard_uncertainty", line.gainStandardUncertainty());
    lines.exact("correlation", line.correlation());
    inUnit("residual_standard_deviation", line.residualStandardDeviation());
    lines.count("degrees_of_freedom", line.degreesOfFreedom());
    lines.exact("r_squared", result.rSquared());
    inUnit("largest_residual", result.largestResidual());
    inUnit("linearity_error", result.linearityError());
    inUnit("hysteresis", result.hysteresis());
    boolean tested = lack.method() != LackOfFit.Method.NOT_TESTED;
    lines.text("lack_of_fit_method", word(lack.method()));
    lines.exact("lack_of_fit_f", tested ? lack.f() : Double.NaN);
    lines.exact("lack_of_fit_p", tested ? lack.p() : Double.NaN);
    lines.truth("curved", lack.isSignificant()).end();
  }

  private static String word(Enum<?> value) {
    return value.name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  private void writeBudget(UncertaintyBudget budget) throws IOException {
    start("budget");
    inUnit("reading", budget.reading());
    inUnit("combined", budget.combined());
    lines.exact("effective_degrees_of_freedom", budget.effectiveDegreesOfFreedom());
    lines.exact("coverage_factor", budget.coverageFactor());
    inUnit("expanded", budget.expanded());
    lines.end();
    for (UncertaintyLine line : budget.lines()) {
      start("budget-line");
      inUnit("reading", budget.reading());
      lines.text("influence", line.name());
      lines.text("distribution", Budgets.distribution(line.distribution()));
      lines.exact("value", line.value()).exact("divisor", line.divisor());
      lines.exact("sensitivity", line.sensitivity());
      inUnit("standard_uncertainty", line.standardUncertainty());
      lines.exact("degrees_of_freedom", line.degreesOfFreedom()).end();
    }
  }

  private void writeVerdict() throws IOException {
    start("verdict").truth("accepted", sheet.outcome().verdict().isAccepted());
    lines.text("accuracy_class", sheet.outcome().verdict().accuracyClass().name());
    writeConformity("as_found", sheet.outcome().verdict().asFound());
    writeConformity("as_left", sheet.outcome().verdict().asLeft());
    lines.exact("test_uncertainty_ratio", sheet.outcome().verdict().testUncertaintyRatio());
    lines.text("decision_rule", Conformity.RULE).end();
    for (Refusal refusal : sheet.outcome().verdict().refusals()) {
      start("refusal").text("reason", refusal.reason().word());
      lines.text("message", refusal.message()).end();
    }
  }

  private void writeConformity(String name, Conformity conformity) throws IOException {
    boolean known = conformity != null;
    lines.text(name, known ? word(conformity.decision()) : "");
    inUnit(name + "_reference", known ? conformity.reference() : Double.NaN);
    inUnit(name + "_error", known ? conformity.error() : Double.NaN);
    inUnit(name + "_error_limit", known ? conformity.errorLimit() : Double.NaN);
    inUnit(name + "_guard_band", known ? conformity.guardBand() : Double.NaN);
  }

  private void writeEnd() throws IOException {
    CalibrationFinish finish = sheet.record().finish();
    if (finish != null) {
      start("finish").text("ending", finish.ending().word()).text("at", time(finish.wallMillis()));
      if (sheet.record().isAccepted()) {
        writeScale("", finish.scale());
        inUnit("expanded_constant", finish.uncertainty().constant());
        lines.exact("expanded_share_of_reading", finish.uncertainty().proportional());
        lines.text("next_due", finish.nextDue().toString());
      }
      lines.text("note", finish.note()).end();
    }
    Withdrawal withdrawal = sheet.record().withdrawal();
    if (withdrawal != null) {
      start("withdrawal").text("from", time(withdrawal.fromWallMillis()));
      lines.text("at", time(withdrawal.wallMillis()));
      lines.text("technician", withdrawal.technicianCode());
      lines.text("reason", withdrawal.reason()).end();
    }
    for (String words : sheet.disagreements()) {
      start("disagreement").text("message", words).end();
    }
  }

  private void writeChecks() throws IOException {
    ControlChart chart = sheet.chart();
    for (CalibrationCheck check : chart.checks()) {
      lines.start("check").count("calibration_number", check.calibrationNumber());
      lines.text("at", time(check.wallMillis())).text("technician", check.technicianCode());
      lines.text("meter", check.meter() == null ? "" : check.meter());
      inUnit("reference", check.reference());
      inUnit("reading", check.reading());
      inUnit("error", check.error());
      inUnit("limit", check.limit());
      lines.truth("passed", check.isPassed()).end();
    }
    if (!chart.checks().isEmpty()) {
      writeChart(chart);
    }
  }

  private void writeChart(ControlChart chart) throws IOException {
    boolean limits = chart.limits() != null;
    boolean drift = chart.drift() != null;
    lines.start("control-chart").count("run_checks", chart.run().size());
    lines.exact("centre_share_of_limit", limits ? chart.limits().centre() : Double.NaN);
    lines.exact("sigma_share_of_limit", limits ? chart.limits().sigma() : Double.NaN);
    lines.exact(
        "drift_share_of_limit_per_month", drift ? chart.drift().sharePerMonth() : Double.NaN);
    lines.exact(
        "drift_expanded_share_of_limit_per_month",
        drift ? chart.drift().expandedPerMonth() : Double.NaN);
    lines.exact("months_to_limit", drift ? chart.drift().monthsToLimit() : Double.NaN);
    lines.startArray("broken_rules");
    for (ControlRule rule : chart.brokenRules()) {
      lines.item(word(rule));
    }
    lines.endArray().end();
  }
}
