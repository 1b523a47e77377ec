package org.boothlamp.cli;

import java.util.List;
import org.boothlamp.calibration.CalibrationHead;
import org.boothlamp.calibration.CalibrationPoint;
import org.boothlamp.calibration.PointPlan;
import org.boothlamp.calibration.ReferenceDoubt;
import org.boothlamp.calibration.WindowFigures;

/**
 * Takes the points of a file without asking anybody: says which level is to be set, waits until the
 * sensor is near it and stable, takes the reference from the file or the meter. Confined to one
 * thread.
 */
final class PointsRun {

  /** A level counts as set within this share of full scale; common practice, no source. */
  private static final double NEAR_SHARE = 0.1;

  private final Terminal terminal;
  private final SteadySensor sensor;
  private final CalibrationUnderWay taking;
  private final List<PointsFile.Row> rows;
  private final double patienceSeconds;

  /**
   * A run that was not begun.
   *
   * @param patienceSeconds longest wait for a point, by the source's time
   */
  PointsRun(
      Terminal terminal,
      SteadySensor sensor,
      CalibrationUnderWay taking,
      PointsFile points,
      double patienceSeconds) {
    this.terminal = terminal;
    this.sensor = sensor;
    this.taking = taking;
    this.rows = points.rows();
    this.patienceSeconds = patienceSeconds;
  }

  /** Why the points taken so far are not those of the file, or null. */
  String contradiction() {
    List<CalibrationPoint> taken = taking.points();
    if (taken.size() > rows.size()) {
      return "the calibration has " + taken.size() + " points and the file " + rows.size();
    }
    for (int i = 0; i < taken.size(); i++) {
      if (!isSame(rows.get(i), taken.get(i))) {
        return "line " + rows.get(i).line() + " is not point " + (i + 1) + " as it was taken";
      }
    }
    return null;
  }

  private static boolean isSame(PointsFile.Row row, CalibrationPoint point) {
    return row.level() == point.level()
        && row.direction() == point.direction()
        && (Double.isNaN(row.reference()) || row.reference() == point.reference());
  }

  /** Takes what is not taken yet. */
  void run() {
    List<CalibrationPoint> taken = taking.points();
    for (int i = 0; i < rows.size(); i++) {
      if (i >= taken.size()) {
        take(rows.get(i));
      }
      discard(i, rows.get(i).discardReason());
    }
  }

  /** Also for a run that was cut off between taking and throwing away. */
  private void discard(int index, String reason) {
    if (!reason.isEmpty() && !taking.points().get(index).isDiscarded()) {
      taking.discard(index, reason);
      terminal.out().println("  thrown away: " + reason);
    }
  }

  private void take(PointsFile.Row row) {
    String unit = taking.head().channel().unit();
    PointPlan.Step step = new PointPlan.Step(row.level(), row.direction());
    terminal.out().println("set " + CalibrationTalk.step(step, unit));
    WindowFigures figures = await(row);
    double reference = Double.isNaN(row.reference()) ? figures.reference().mean() : row.reference();
    refuseDoubtful(row, reference, figures);
    taking.take(figures.point(row.level(), row.direction(), reference));
    List<CalibrationPoint> points = taking.points();
    int last = points.size() - 1;
    terminal.out().println(CalibrationTalk.point(last, points.get(last), taking.head()));
    terminal.out().println("  " + CalibrationTalk.figures(figures));
    if (sensor.readsMeter()) {
      terminal.out().println("  " + CalibrationTalk.meter(figures, unit));
    }
  }

  private WindowFigures await(PointsFile.Row row) {
    sensor.clear();
    WaitLine line = new WaitLine(terminal, sensor);
    double tolerance = tolerance(row.level());
    while (true) {
      sensor.step();
      WindowFigures figures = sensor.figures();
      if (sensor.isReady(figures)
          && Math.abs(sensor.nominalOf(figures) - row.level()) <= tolerance) {
        line.end();
        return figures;
      }
      line.show();
      if (line.seconds() > patienceSeconds) {
        throw impatient(row, tolerance, line.reason());
      }
    }
  }

  /** Nearer to this level than to any other, or the level before would be taken for it. */
  private double tolerance(double level) {
    double tolerance = NEAR_SHARE * taking.head().fullScale();
    for (PointsFile.Row row : rows) {
      double distance = Math.abs(row.level() - level);
      if (distance > 0) {
        tolerance = Math.min(tolerance, distance / 2);
      }
    }
    return tolerance;
  }

  private CommandFailedException impatient(PointsFile.Row row, double tolerance, String stability) {
    CalibrationHead head = taking.head();
    String unit = head.channel().unit();
    WindowFigures figures = sensor.figures();
    String shown =
        figures == null ? "nothing" : CalibrationTalk.amount(sensor.nominalOf(figures), unit);
    return new CommandFailedException(
        "line "
            + row.line()
            + ": level "
            + CalibrationTalk.amount(row.level(), unit)
            + " was waited for longer than --patience, "
            + Wording.number(patienceSeconds)
            + " s; the sensor must be stable within "
            + CalibrationTalk.amount(tolerance, unit)
            + " of it and shows "
            + shown
            + "; "
            + stability);
  }

  private void refuseDoubtful(PointsFile.Row row, double reference, WindowFigures figures) {
    CalibrationHead head = taking.head();
    String question =
        ReferenceDoubt.question(
            head.channel(), reference, sensor.nominalOf(figures), head.fullScale());
    if (question != null && !row.isConfirmed()) {
      throw new CommandFailedException(
          "line "
              + row.line()
              + ": "
              + question
              + "; correct the line, or write yes in its column confirmed");
    }
  }
}
