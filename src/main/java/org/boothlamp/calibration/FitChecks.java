package org.boothlamp.calibration;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.DoubleStream;
import org.boothlamp.signal.ChannelScale;

/** What can be said against a fitted line, and how old and new scale stand against the class. */
final class FitChecks {

  private final CalibrationRun run;
  private final CalibrationRules rules;
  private final CalibrationResult result;
  private final UncertaintyModel uncertainty;
  private final List<Refusal> refusals = new ArrayList<>();

  FitChecks(
      CalibrationRun run,
      CalibrationRules rules,
      CalibrationResult result,
      UncertaintyModel uncertainty) {
    this.run = run;
    this.rules = rules;
    this.result = result;
    this.uncertainty = uncertainty;
  }

  List<Refusal> check() {
    checkCurvature();
    checkHysteresis();
    checkReference();
    checkClass();
    return refusals;
  }

  /** How far off a scale is at the used points. */
  Conformity conformityOf(ChannelScale scale) {
    return Conformity.worst(
        result.residuals().stream().map(r -> conformityAt(r.point(), scale)).toList());
  }

  private Conformity conformityAt(CalibrationPoint point, ChannelScale scale) {
    double error = scale.toUnits(point.meanCounts()) - point.reference();
    return Conformity.at(
        point.reference(),
        error,
        errorLimit(point.reference()),
        uncertainty.expandedAt(point.reference()));
  }

  /** Error limit over the expanded uncertainty of the calibration, where it is smallest. */
  double testUncertaintyRatio() {
    return references()
        .map(reading -> errorLimit(reading) / uncertainty.processExpandedAt(reading))
        .min()
        .orElseThrow();
  }

  private void checkCurvature() {
    double limit = rules.largestLinearityShare() * run.fullScale();
    if (result.lackOfFit().isSignificant() && result.linearityError() > limit) {
      refuse(
          RefusalReason.CURVED,
          "the sensor must follow a straight line within "
              + amount(limit)
              + ", a level lies "
              + amount(result.linearityError())
              + " off it and scatter does not explain that (F = "
              + MeasuredValue.figure(result.lackOfFit().f())
              + ", although R² = "
              + result.rSquared()
              + "); look for a saturated sensor or a wrong level, or calibrate a smaller range");
    }
  }

  private void checkHysteresis() {
    double limit = rules.largestHysteresisShare() * run.fullScale();
    if (result.hysteresis() > limit) {
      refuse(
          RefusalReason.HYSTERESIS_TOO_LARGE,
          "rising and falling may differ by "
              + amount(limit)
              + ", they differ by "
              + amount(result.hysteresis())
              + "; demagnetise or replace the sensor, and close the clamp well");
    }
  }

  private void checkReference() {
    double worst =
        references().boxed().min(Comparator.comparingDouble(this::referenceRatio)).orElseThrow();
    if (referenceRatio(worst) < rules.smallestReferenceRatio()) {
      refuse(
          RefusalReason.REFERENCE_TOO_COARSE,
          "the error limit must be "
              + MeasuredValue.figure(rules.smallestReferenceRatio())
              + " times the reference meter's uncertainty, at "
              + amount(worst)
              + " it is "
              + MeasuredValue.figure(referenceRatio(worst))
              + " times (limit "
              + amount(errorLimit(worst))
              + ", meter "
              + MeasuredValue.uncertainty(uncertainty.referenceExpandedAt(worst))
              + " "
              + run.channel().unit()
              + "); use a better meter or a wider class");
    }
  }

  private double referenceRatio(double reading) {
    return errorLimit(reading) / uncertainty.referenceExpandedAt(reading);
  }

  private void checkClass() {
    Conformity left = conformityOf(result.calibrate(run.nominal()));
    if (left.decision() != Conformity.Decision.CONFORMS) {
      refuse(
          RefusalReason.OUTSIDE_CLASS,
          "class "
              + rules.accuracyClass().name()
              + " allows "
              + amount(left.errorLimit())
              + " less the guard band U = "
              + MeasuredValue.uncertainty(left.guardBand())
              + " "
              + run.channel().unit()
              + ", at "
              + amount(left.reference())
              + " the calibrated sensor is off by "
              + amount(left.error())
              + "; the largest lines of the budget say what to better");
    }
  }

  private DoubleStream references() {
    return result.residuals().stream().mapToDouble(r -> r.point().reference());
  }

  private double errorLimit(double reading) {
    return rules.accuracyClass().errorLimit(reading, run.fullScale());
  }

  private String amount(double value) {
    return MeasuredValue.figure(value) + " " + run.channel().unit();
  }

  private void refuse(RefusalReason reason, String message) {
    refusals.add(new Refusal(reason, message));
  }
}
