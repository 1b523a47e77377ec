package org.boothlamp.report;

import java.util.ArrayList;
import java.util.List;
import org.boothlamp.calibration.CalibrationFinish;
import org.boothlamp.calibration.CalibrationPoint;
import org.boothlamp.calibration.CalibrationResult;
import org.boothlamp.calibration.Channel;
import org.boothlamp.calibration.UncertaintyBudget;

/**
 * One calibration as a single table (RFC 4180: a header line, lines ended by CR LF, as many fields
 * in each): first {@code point} rows, then {@code result} rows of name, value and unit. Numbers
 * have all their digits, what is not known is empty. A free text that a spreadsheet would take for
 * a formula has an apostrophe in front. A pure function.
 */
public final class CalibrationCsv {

  private static final String END = "\r\n";
  private static final int POINT_COLUMNS = 14;
  private static final String FORMULA_STARTS = "=+-@\t\r";

  private final CalibrationSheet sheet;
  private final StringBuilder out = new StringBuilder(4_096);

  private CalibrationCsv(CalibrationSheet sheet) {
    this.sheet = sheet;
  }

  /** The whole table. */
  public static String render(CalibrationSheet sheet) {
    return new CalibrationCsv(sheet).render();
  }

  /** What the names of amps or volts end in. */
  static String unitSuffix(Channel channel) {
    return channel == Channel.CURRENT ? "_amps" : "_volts";
  }

  private String render() {
    String unit = unitSuffix(sheet.record().channel());
    row(
        List.of(
            "kind",
            "name",
            "value",
            "unit",
            "level" + unit,
            "direction",
            "mean_counts",
            "standard_deviation_counts",
            "readings",
            "drift_counts",
            "nominal" + unit,
            "reference" + unit,
            "fitted" + unit,
            "residual" + unit,
            "as_found_error" + unit,
            "studentized",
            "outlier",
            "discard_reason"));
    sheet.points().forEach(this::point);
    facts();
    fit();
    sheet.budgets().forEach(this::budget);
    verdict();
    return out.toString();
  }

  private void point(SheetPoint row) {
    CalibrationPoint point = row.point();
    row(
        List.of(
            "point",
            Integer.toString(row.index()),
            "",
            "",
            number(point.level()),
            CalibrationWords.direction(point.direction()),
            number(point.meanCounts()),
            number(point.standardDeviationCounts()),
            Long.toString(point.readings()),
            number(point.driftCounts()),
            number(row.nominal()),
            number(point.reference()),
            number(row.fitted()),
            number(row.residual()),
            number(row.asFoundError()),
            number(row.fit() == null ? Double.NaN : row.fit().studentized()),
            row.isOutlier() ? "yes" : "no",
            text(point.discardReason())));
  }

  private void facts() {
    result("calibration_number", Long.toString(sheet.record().number()), "");
    result("booth", text(sheet.head().booth()), "");
    result("channel", sheet.record().channel().word(), "");
    result("date", sheet.head().date().toString(), "");
    result("technician", text(sheet.head().technicianCode()), "");
    result("meter", text(sheet.head().meter().make()), "");
    result("meter_serial_number", text(sheet.head().meter().serialNumber()), "");
    result("meter_certificate", text(sheet.head().meter().certificateNumber()), "");
    result("meter_certificate_date", sheet.head().meter().certificateDate().toString(), "");
    result("full_scale", number(sheet.head().fullScale()), sheet.unit());
    result("status", sheet.status().words(), "");
  }

  private void fit() {
    CalibrationResult fit = sheet.result();
    if (fit == null) {
      return;
    }
    String unit = sheet.unit();
    result("offset", number(fit.line().offset()), unit);
    result("offset_standard_uncertainty", number(fit.line().offsetStandardUncertainty()), unit);
    result("gain", number(fit.line().gain()), "");
    result("gain_standard_uncertainty", number(fit.line().gainStandardUncertainty()), "");
    result("correlation", number(fit.line().correlation()), "");
    result("residual_standard_deviation", number(fit.line().residualStandardDeviation()), unit);
    result("largest_residual", number(fit.largestResidual()), unit);
    result("linearity_error", number(fit.linearityError()), unit);
    result("hysteresis", number(fit.hysteresis()), unit);
  }

  private void budget(UncertaintyBudget budget) {
    String at = " at " + number(budget.reading()) + " " + sheet.unit();
    budget
        .lines()
        .forEach(
            line ->
                result(
                    "standard uncertainty, " + line.name() + at,
                    number(line.standardUncertainty()),
                    sheet.unit()));
    result("combined standard uncertainty" + at, number(budget.combined()), sheet.unit());
    result("coverage factor" + at, number(budget.coverageFactor()), "");
    result("expanded uncertainty" + at, number(budget.expanded()), sheet.unit());
  }

  private void verdict() {
    CalibrationFinish finish = sheet.record().finish();
    if (sheet.record().isAccepted()) {
      result("scale_per_count", number(finish.scale().unitsPerCount()), sheet.unit());
      result("scale_zero_count", number(finish.scale().zeroCount()), "");
      result("expanded_constant", number(finish.uncertainty().constant()), sheet.unit());
      result("expanded_share_of_reading", number(finish.uncertainty().proportional()), "");
      result("next_due", finish.nextDue().toString(), "");
    }
    sheet.objections().forEach(reason -> result("refusal", text(reason), ""));
    if (sheet.record().withdrawal() != null) {
      result("withdrawn_from", sheet.moment(sheet.record().withdrawal().fromWallMillis()), "");
      result("withdrawal_reason", text(sheet.record().withdrawal().reason()), "");
    }
    sheet.disagreements().forEach(words -> result("disagreement", text(words), ""));
  }

  private void result(String name, String value, String unit) {
    List<String> fields = new ArrayList<>(List.of("result", name, value, unit));
    for (int i = 0; i < POINT_COLUMNS; i++) {
      fields.add("");
    }
    row(fields);
  }

  private void row(List<String> fields) {
    for (int i = 0; i < fields.size(); i++) {
      out.append(i == 0 ? "" : ",").append(quoted(fields.get(i)));
    }
    out.append(END);
  }

  private static String number(double value) {
    return Double.isFinite(value) ? Double.toString(value) : "";
  }

  private static String text(String free) {
    boolean formula =
        free != null && !free.isEmpty() && FORMULA_STARTS.indexOf(free.charAt(0)) >= 0;
    return (formula ? "'" : "") + VisibleText.of(free);
  }

  private static String quoted(String field) {
    boolean plain = field.chars().noneMatch(c -> c == '"' || c == ',' || c == '\r' || c == '\n');
    return plain ? field : '"' + field.replace("\"", "\"\"") + '"';
  }
}
