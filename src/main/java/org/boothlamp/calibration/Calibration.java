package org.boothlamp.calibration;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import org.boothlamp.signal.ChannelScale;

/**
 * From points to verdict: check, fit, budget, decide. Pure; the same run and rules always give the
 * same outcome. Safe to share.
 */
public final class Calibration {

  private Calibration() {}

  /**
   * @param run what was taken down
   * @param inUse the scale the booth measured with until now, for the errors as found
   * @param rules what it must come up to
   */
  public static CalibrationOutcome evaluate(
      CalibrationRun run, ChannelScale inUse, CalibrationRules rules) {
    List<Refusal> refusals = new ArrayList<>(PointChecks.check(run, rules));
    if (!PointChecks.allowFit(run)) {
      return refused(run, null, withCause(refusals), rules);
    }
    CalibrationResult result = LineFit.fit(PointTable.of(run, rules.weighting()));
    if (!isPlausible(result.line().gain())) {
      refusals.add(implausible(result.line().gain()));
      return refused(run, result, refusals, rules);
    }
    return judged(run, inUse, result, refusals, rules);
  }

  private static CalibrationOutcome judged(
      CalibrationRun run,
      ChannelScale inUse,
      CalibrationResult result,
      List<Refusal> refusals,
      CalibrationRules rules) {
    UncertaintyModel uncertainty = UncertaintyModel.of(run, result, rules.temperature());
    FitChecks checks = new FitChecks(run, rules, result, uncertainty);
    refusals.addAll(checks.check());
    Verdict verdict =
        new Verdict(
            refusals,
            rules.accuracyClass(),
            checks.conformityOf(inUse),
            checks.conformityOf(result.calibrate(run.nominal())),
            checks.testUncertaintyRatio(),
            nextDue(run, rules));
    return new CalibrationOutcome(run, result, uncertainty, verdict);
  }

  private static CalibrationOutcome refused(
      CalibrationRun run,
      CalibrationResult result,
      List<Refusal> refusals,
      CalibrationRules rules) {
    Verdict verdict =
        new Verdict(refusals, rules.accuracyClass(), null, null, Double.NaN, nextDue(run, rules));
    return new CalibrationOutcome(run, result, null, verdict);
  }

  private static LocalDate nextDue(CalibrationRun run, CalibrationRules rules) {
    return run.date().plusMonths(rules.calibrationMonths());
  }

  private static boolean isPlausible(double gain) {
    return gain >= CalibrationRules.SMALLEST_GAIN && gain <= CalibrationRules.LARGEST_GAIN;
  }

  private static Refusal implausible(double gain) {
    return new Refusal(
        RefusalReason.GAIN_IMPLAUSIBLE,
        "the gain against the nominal scale must be "
            + CalibrationRules.SMALLEST_GAIN
            + " to "
            + CalibrationRules.LARGEST_GAIN
            + ", is "
            + MeasuredValue.figure(gain)
            + "; check the unit of the reference readings, the direction of the sensor and its"
            + " nominal scale");
  }

  /** Points that allow no fit must never pass for want of a rule that says so. */
  private static List<Refusal> withCause(List<Refusal> refusals) {
    if (refusals.isEmpty()) {
      refusals.add(
          new Refusal(
              RefusalReason.NOT_MEASURED,
              "at least 3 different sensor readings are needed to fit a line, the sensor shows"
                  + " fewer; check that it is connected"));
    }
    return refusals;
  }
}
