package org.boothlamp.cli;

import java.util.List;
import java.util.Locale;
import org.boothlamp.calibration.CalibrationHead;
import org.boothlamp.calibration.CalibrationOutcome;
import org.boothlamp.calibration.CalibrationPoint;
import org.boothlamp.calibration.CalibrationResult;
import org.boothlamp.calibration.Conformity;
import org.boothlamp.calibration.Direction;
import org.boothlamp.calibration.MeasuredValue;
import org.boothlamp.calibration.PointPlan;
import org.boothlamp.calibration.PointResidual;
import org.boothlamp.calibration.UncertaintyModel;
import org.boothlamp.calibration.Verdict;
import org.boothlamp.calibration.WindowFigures;

/** How a calibration under way is said: points, fit, verdict. The certificate has the rest. */
final class CalibrationTalk {

  private CalibrationTalk() {}

  static String amount(double value, String unit) {
    return MeasuredValue.figure(value) + " " + unit;
  }

  static String word(Direction direction) {
    return direction.name().toLowerCase(Locale.ROOT);
  }

  static String step(PointPlan.Step step, String unit) {
    return amount(step.level(), unit) + ", " + word(step.direction());
  }

  /** "mean 854.4 counts, standard deviation 1.2, drift 0.3 in 10 s". */
  static String figures(WindowFigures figures) {
    return String.format(
        Locale.ROOT,
        "mean %.2f counts, standard deviation %.2f, drift %+.2f in %.0f s",
        figures.mean(),
        figures.standardDeviation(),
        figures.drift(),
        figures.seconds());
  }

  /** What the meter said over the same time. */
  static String meter(WindowFigures figures, String unit) {
    return String.format(
        Locale.ROOT,
        "meter: mean %s of %d readings, standard deviation %s",
        amount(figures.reference().mean(), unit),
        figures.reference().readings(),
        amount(figures.reference().standardDeviation(), unit));
  }

  /** One line for a point: number, what was set, what was read, what became of it. */
  static String point(int index, CalibrationPoint point, CalibrationHead head) {
    String unit = head.channel().unit();
    String line =
        String.format(
            Locale.ROOT,
            "%3d  %9s %-8s sensor %10s  reference %10s",
            index + 1,
            amount(point.level(), unit),
            word(point.direction()),
            amount(head.nominal().toUnits(point.meanCounts()), unit),
            amount(point.reference(), unit));
    return point.isDiscarded() ? line + "  thrown away: " + point.discardReason() : line;
  }

  /** All points, one a line. */
  static String points(List<CalibrationPoint> points, CalibrationHead head) {
    if (points.isEmpty()) {
      return "no points yet\n";
    }
    StringBuilder text = new StringBuilder();
    for (int i = 0; i < points.size(); i++) {
      text.append(point(i, points.get(i), head)).append('\n');
    }
    return text.toString();
  }

  /** Fit, uncertainty, verdict. */
  static String summary(CalibrationOutcome outcome) {
    StringBuilder text = new StringBuilder();
    if (outcome.result() != null) {
      fit(text, outcome);
    }
    if (outcome.uncertainty() != null) {
      uncertainty(text, outcome);
    }
    verdict(text, outcome);
    return text.toString();
  }

  private static void fit(StringBuilder text, CalibrationOutcome outcome) {
    CalibrationResult result = outcome.result();
    String unit = outcome.run().channel().unit();
    double gainU = 2 * result.line().gainStandardUncertainty();
    double offsetU = 2 * result.line().offsetStandardUncertainty();
    line(
        text,
        "fit",
        "gain "
            + MeasuredValue.value(result.line().gain(), gainU)
            + " ± "
            + MeasuredValue.uncertainty(gainU)
            + ", zero "
            + MeasuredValue.value(result.line().offset(), offsetU)
            + " ± "
            + MeasuredValue.uncertainty(offsetU)
            + " "
            + unit
            + " against the nominal scale (k = 2)");
    line(
        text,
        "",
        "largest residual "
            + amount(result.largestResidual(), unit)
            + ", off the line "
            + amount(result.linearityError(), unit)
            + ", hysteresis "
            + amount(result.hysteresis(), unit));
    for (PointResidual outlier : result.outliers()) {
      line(
          text,
          "outlier",
          "point "
              + (outcome.run().points().indexOf(outlier.point()) + 1)
              + " is "
              + amount(outlier.residual(), unit)
              + " off; repeat it, or throw it away with a reason");
    }
  }

  private static void uncertainty(StringBuilder text, CalibrationOutcome outcome) {
    UncertaintyModel model = outcome.uncertainty();
    String unit = outcome.run().channel().unit();
    double low = model.low();
    double high = model.high();
    double end = high > 0 ? high : low;
    line(
        text,
        "U",
        "± "
            + MeasuredValue.uncertainty(model.expandedAt(0))
            + " "
            + unit
            + " at 0, ± "
            + MeasuredValue.uncertainty(model.expandedAt(end))
            + " "
            + unit
            + " at "
            + amount(end, unit)
            + " (k = "
            + MeasuredValue.figure(model.at(end).coverageFactor())
            + ")");
  }

  private static void verdict(StringBuilder text, CalibrationOutcome outcome) {
    Verdict verdict = outcome.verdict();
    String unit = outcome.run().channel().unit();
    if (verdict.asFound() != null) {
      line(text, "as found", conformity(verdict.asFound(), unit));
      line(text, "as left", conformity(verdict.asLeft(), unit));
    }
    if (verdict.isAccepted()) {
      line(text, "verdict", "can be accepted; due again " + verdict.nextDue());
    }
    verdict.refusals().forEach(refusal -> line(text, "refused", refusal.message()));
  }

  private static String conformity(Conformity conformity, String unit) {
    String word =
        switch (conformity.decision()) {
          case CONFORMS -> "conforms";
          case UNDECIDED -> "cannot be told";
          case FAILS -> "fails";
        };
    return word
        + ": error "
        + amount(conformity.error(), unit)
        + " at "
        + amount(conformity.reference(), unit)
        + ", limit "
        + amount(conformity.errorLimit(), unit)
        + " less U "
        + MeasuredValue.uncertainty(conformity.guardBand())
        + " "
        + unit;
  }

  private static void line(StringBuilder text, String head, String rest) {
    text.append(String.format(Locale.ROOT, "%-9s %s%n", head, rest));
  }
}
