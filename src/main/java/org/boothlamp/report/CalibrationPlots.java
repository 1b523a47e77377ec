package org.boothlamp.report;

import java.util.List;
import java.util.function.ToDoubleFunction;
import org.boothlamp.calibration.Direction;
import org.boothlamp.calibration.MeasuredValue;
import org.boothlamp.report.Plot.Mark;

/** The drawings of one calibration: residuals about the line, and errors against the class. */
final class CalibrationPlots {

  private static final int WIDTH = 340;

  /** A class limit farther out than this would press the residuals into a line. */
  private static final double FARTHEST_LIMIT = 3;

  private final CalibrationSheet sheet;
  private final Markup page;
  private final List<SheetPoint> measured;
  private final double low;
  private final double high;

  CalibrationPlots(CalibrationSheet sheet, Markup page) {
    this.sheet = sheet;
    this.page = page;
    this.measured = sheet.points().stream().filter(row -> row.point().isMeasured()).toList();
    double fullScale = sheet.head().fullScale();
    double lowest = edge(row -> -row.point().reference());
    double highest = edge(row -> row.point().reference());
    double top = highest > 0 || lowest <= 0 ? Math.max(highest, fullScale) : 0;
    double room = 0.03 * (top + lowest);
    this.low = -lowest - room;
    this.high = top + room;
  }

  /** How far a value reaches above zero; 0 if it does not. */
  private double edge(ToDoubleFunction<SheetPoint> value) {
    return Math.max(0, measured.stream().mapToDouble(value).max().orElse(0));
  }

  boolean isEmpty() {
    return measured.isEmpty();
  }

  private List<SheetPoint> used() {
    return measured.stream().filter(row -> !row.point().isDiscarded()).toList();
  }

  private double limit(double reading) {
    return sheet.head().rules().accuracyClass().errorLimit(reading, sheet.head().fullScale());
  }

  private double farthestLimit() {
    return Math.max(limit(low), limit(high));
  }

  private static double largest(List<SheetPoint> rows, ToDoubleFunction<SheetPoint> value) {
    return rows.stream().mapToDouble(value).map(Math::abs).filter(Double::isFinite).max().orElse(0);
  }

  private double expanded(double reading) {
    return sheet.uncertainty().expandedAt(reading);
  }

  /** Reference less line, with U about it. */
  void residuals() {
    boolean known = sheet.uncertainty() != null;
    double content = largest(used(), SheetPoint::residual);
    if (known) {
      content = Math.max(content, Math.max(expanded(low), expanded(high)));
    }
    boolean limitFits = farthestLimit() <= FARTHEST_LIMIT * content;
    double reach = 1.15 * Math.max(content, limitFits || content == 0 ? farthestLimit() : 0);
    Plot plot = new Plot(page, "Residuals against reference", WIDTH, low, high, reach);
    if (known) {
      plot.band(this::expanded);
    }
    axes(plot, "residual, ");
    if (limitFits) {
      plot.bothWays("limit", this::limit);
    } else {
      plot.note(
          "class limit ± " + MeasuredValue.figure(limit(0)) + " " + sheet.unit() + " lies outside");
    }
    measured.stream().filter(row -> plot.holds(row.residual())).forEach(row -> residual(plot, row));
    plot.close();
  }

  private static void residual(Plot plot, SheetPoint row) {
    double x = row.point().reference();
    if (row.point().isDiscarded()) {
      plot.mark(Mark.CROSS, x, row.residual());
      return;
    }
    boolean rising = row.point().direction() == Direction.RISING;
    plot.mark(rising ? Mark.UP : Mark.DOWN, x, row.residual());
    if (row.isOutlier()) {
      plot.mark(Mark.RING, x, row.residual());
    }
  }

  /** What the old and the new scale show, less the reference, against the class. */
  void errors() {
    boolean left = sheet.uncertainty() != null;
    double content = Math.max(farthestLimit(), largest(used(), SheetPoint::asFoundError));
    if (left) {
      content = Math.max(content, largest(used(), SheetPoint::asLeftError));
    }
    Plot plot = new Plot(page, "Errors as found and as left", WIDTH, low, high, 1.15 * content);
    axes(plot, "error, ");
    plot.bothWays("limit", this::limit);
    if (left) {
      plot.bothWays("inner", reading -> Math.max(0, limit(reading) - expanded(reading)));
    }
    for (SheetPoint row : used()) {
      plot.mark(Mark.CIRCLE, row.point().reference(), row.asFoundError());
      if (left) {
        plot.mark(Mark.SQUARE, row.point().reference(), row.asLeftError());
      }
    }
    plot.close();
  }

  private void axes(Plot plot, String what) {
    plot.yAxis(what + sheet.unit());
    plot.xAxis("reference, " + sheet.unit());
  }
}
