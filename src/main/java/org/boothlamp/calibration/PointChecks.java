package org.boothlamp.calibration;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;

/** What can be said against a run before anything is fitted. */
final class PointChecks {

  private final CalibrationRun run;
  private final CalibrationRules rules;
  private final List<CalibrationPoint> kept;
  private final List<PointTable.Level> levels;
  private final List<Refusal> refusals = new ArrayList<>();

  private PointChecks(CalibrationRun run, CalibrationRules rules) {
    this.run = run;
    this.rules = rules;
    this.kept = run.kept();
    this.levels = PointTable.levelsOf(kept);
  }

  static List<Refusal> check(CalibrationRun run, CalibrationRules rules) {
    PointChecks checks = new PointChecks(run, rules);
    checks.checkCertificate();
    checks.checkLevels();
    if (checks.checkMeasured()) {
      checks.checkSpan();
      checks.checkZero();
      checks.checkDirections();
    }
    return checks.refusals;
  }

  /** True if a line can be put through the points, good or bad. */
  static boolean allowFit(CalibrationRun run) {
    List<CalibrationPoint> kept = run.kept();
    return kept.stream().allMatch(CalibrationPoint::isMeasured)
        && PointTable.levelsOf(kept).size() >= 3
        && kept.stream().mapToDouble(CalibrationPoint::meanCounts).distinct().count() >= 3
        && kept.size() >= 4;
  }

  private void checkCertificate() {
    LocalDate issued = run.meter().certificateDate();
    LocalDate end = issued.plusMonths(rules.certificateMonths());
    if (issued.isAfter(run.date())) {
      refuse(
          RefusalReason.CERTIFICATE_OUT_OF_DATE,
          certificate() + " is dated " + issued + ", after " + run.date() + "; check both dates");
    } else if (run.date().isAfter(end)) {
      refuse(
          RefusalReason.CERTIFICATE_OUT_OF_DATE,
          certificate()
              + " was good for "
              + rules.certificateMonths()
              + " months until "
              + end
              + ", today is "
              + run.date()
              + "; use a meter with a certificate in force");
    }
  }

  private String certificate() {
    return "certificate "
        + run.meter().certificateNumber()
        + " of meter "
        + run.meter().serialNumber();
  }

  private void checkLevels() {
    if (levels.size() < rules.smallestLevels()) {
      refuse(
          RefusalReason.TOO_FEW_LEVELS,
          "at least "
              + rules.smallestLevels()
              + " different levels are needed, "
              + levels.size()
              + " are left; take points at more levels");
    }
  }

  private boolean checkMeasured() {
    for (CalibrationPoint point : kept) {
      if (!point.isMeasured()) {
        refuse(
            RefusalReason.NOT_MEASURED,
            at(point.level())
                + " a number is missing or an overload (sensor "
                + point.meanCounts()
                + " counts, standard deviation "
                + point.standardDeviationCounts()
                + ", reference "
                + point.reference()
                + "); repeat the point or throw it away");
        return false;
      }
    }
    return !kept.isEmpty();
  }

  private void checkSpan() {
    double low = kept.stream().mapToDouble(CalibrationPoint::reference).min().orElseThrow();
    double high = kept.stream().mapToDouble(CalibrationPoint::reference).max().orElseThrow();
    double needed = rules.smallestSpanShare() * run.fullScale();
    if (high - low < needed) {
      refuse(
          RefusalReason.SPAN_TOO_SMALL,
          "the points must span at least "
              + amount(needed)
              + ", they go from "
              + amount(low)
              + " to "
              + amount(high)
              + "; take points nearer to full scale, "
              + amount(run.fullScale()));
    }
  }

  private void checkZero() {
    double limit = CalibrationRules.ZERO_SHARE * run.fullScale();
    boolean zero = kept.stream().anyMatch(point -> Math.abs(point.reference()) <= limit);
    if (run.channel() == Channel.CURRENT && !zero) {
      refuse(
          RefusalReason.ZERO_MISSING,
          "a current sensor needs a point at zero, within "
              + amount(limit)
              + "; take one with no current in the clamp");
    }
  }

  /** At the lowest and the highest level the way turns, so one direction will do. */
  private void checkDirections() {
    for (int i = 1; i < levels.size() - 1; i++) {
      PointTable.Level level = levels.get(i);
      if (!level.isBothWays()) {
        refuse(
            RefusalReason.DIRECTION_MISSING,
            at(level.level())
                + " there is no "
                + (level.rising().isEmpty() ? "rising" : "falling")
                + " point, so hysteresis is not known; take it");
        return;
      }
    }
  }

  private String at(double level) {
    return "at level " + amount(level);
  }

  private String amount(double value) {
    return MeasuredValue.figure(value) + " " + run.channel().unit();
  }

  private void refuse(RefusalReason reason, String message) {
    refusals.add(new Refusal(reason, message));
  }
}
