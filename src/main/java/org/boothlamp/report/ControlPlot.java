package org.boothlamp.report;

import java.util.ArrayList;
import java.util.List;
import org.boothlamp.calibration.CalibrationCheck;
import org.boothlamp.calibration.ControlLimits;
import org.boothlamp.report.Plot.Mark;

/** The one-point checks over time, each between its own limits. */
final class ControlPlot {

  private static final int WIDTH = 690;
  private static final long LEAST_SPAN_MILLIS = 86_400_000;

  private final CalibrationSheet sheet;
  private final List<CalibrationCheck> checks;
  private final double aside;
  private final Plot plot;

  private ControlPlot(CalibrationSheet sheet, Markup page) {
    this.sheet = sheet;
    this.checks = sheet.chart().checks();
    long first = checks.get(0).wallMillis();
    long span = Math.max(LEAST_SPAN_MILLIS, checks.get(checks.size() - 1).wallMillis() - first);
    this.aside = 0.02 * span;
    double reach =
        checks.stream()
            .mapToDouble(check -> Math.max(check.limit(), Math.abs(check.error())))
            .filter(Double::isFinite)
            .max()
            .orElse(0);
    this.plot =
        new Plot(
            page,
            "Errors of the one-point checks over time",
            WIDTH,
            first - 0.04 * span,
            first + 1.04 * span,
            reach > 0 ? 1.15 * reach : 1);
  }

  /** Draws the chart; there must be a check. */
  static void draw(CalibrationSheet sheet, Markup page) {
    new ControlPlot(sheet, page).draw();
  }

  private void draw() {
    plot.yAxis("error, " + sheet.unit());
    days();
    limits();
    ControlLimits limits = sheet.chart().limits();
    if (limits != null) {
      run("centre", limits.centre());
      run("control", limits.lower());
      run("control", limits.upper());
    }
    changes();
    for (CalibrationCheck check : checks) {
      plot.mark(check.isPassed() ? Mark.CIRCLE : Mark.CROSS, check.wallMillis(), check.error());
      if (!check.isPassed()) {
        plot.mark(Mark.RING, check.wallMillis(), check.error());
      }
    }
    plot.close();
  }

  /** A line for the checks of each calibration in turn. */
  private void limits() {
    List<double[]> above = new ArrayList<>();
    List<double[]> below = new ArrayList<>();
    for (int i = 0; i < checks.size(); i++) {
      above.add(at(checks.get(i), checks.get(i).limit()));
      below.add(at(checks.get(i), -checks.get(i).limit()));
      if (i + 1 == checks.size() || isChange(i + 1)) {
        plot.path("limit", widened(above));
        plot.path("limit", widened(below));
        above.clear();
        below.clear();
      }
    }
  }

  /** One point alone is no line: it becomes a short one. */
  private List<double[]> widened(List<double[]> points) {
    if (points.size() > 1) {
      return List.copyOf(points);
    }
    double[] alone = points.get(0);
    return List.of(
        new double[] {alone[0] - aside, alone[1]}, new double[] {alone[0] + aside, alone[1]});
  }

  private boolean isChange(int index) {
    return checks.get(index).calibrationNumber() != checks.get(index - 1).calibrationNumber();
  }

  private void days() {
    int last = checks.size() - 1;
    day(checks.get(0), last == 0 ? "middle" : "start");
    if (last >= 1) {
      day(checks.get(last), "end");
    }
  }

  private void day(CalibrationCheck check, String anchor) {
    plot.xWords(
        check.wallMillis(), sheet.local(check.wallMillis()).toLocalDate().toString(), anchor);
  }

  private void run(String style, double share) {
    plot.path(
        style,
        sheet.chart().run().stream().map(check -> at(check, share * check.limit())).toList());
  }

  private void changes() {
    for (int i = 1; i < checks.size(); i++) {
      long number = checks.get(i).calibrationNumber();
      if (isChange(i)) {
        double middle = 0.5 * (checks.get(i - 1).wallMillis() + checks.get(i).wallMillis());
        plot.line("change", middle, -Double.MAX_VALUE, middle, Double.MAX_VALUE);
        plot.xWords(middle, number == 0 ? "uncalibrated" : "calibration " + number, "middle");
      }
    }
  }

  private static double[] at(CalibrationCheck check, double value) {
    return new double[] {check.wallMillis(), value};
  }
}
