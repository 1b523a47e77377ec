package org.boothlamp.report;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.ZonedDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.boothlamp.calibration.CalibrationCheck;
import org.boothlamp.calibration.CalibrationFinish;
import org.boothlamp.calibration.CalibrationFinish.Ending;
import org.boothlamp.calibration.CalibrationHead;
import org.boothlamp.calibration.CalibrationOutcome;
import org.boothlamp.calibration.CalibrationPoint;
import org.boothlamp.calibration.CalibrationRecord;
import org.boothlamp.calibration.CalibrationResult;
import org.boothlamp.calibration.ControlChart;
import org.boothlamp.calibration.PointResidual;
import org.boothlamp.calibration.Refusal;
import org.boothlamp.calibration.UncertaintyBudget;
import org.boothlamp.calibration.UncertaintyModel;

/**
 * One calibration with all that a page says of it, computed once and then only written out. What
 * was signed comes from the record; the rest is computed again from its points. Immutable.
 */
public final class CalibrationSheet {

  private final CalibrationRecord record;
  private final CalibrationOutcome outcome;
  private final ControlChart chart;
  private final ZoneId zone;
  private final LocalDate today;
  private final List<SheetPoint> points;

  /**
   * The sheet of a record.
   *
   * @param checks one-point checks of the record's channel in order of time, of any calibration
   * @param zone of all times of day
   * @param today the day it is looked at
   */
  public CalibrationSheet(
      CalibrationRecord record, List<CalibrationCheck> checks, ZoneId zone, LocalDate today) {
    this.record = record;
    this.outcome = record.evaluate();
    this.chart = ControlChart.of(checks);
    this.zone = zone;
    this.today = today;
    this.points = sheetPoints();
  }

  CalibrationRecord record() {
    return record;
  }

  CalibrationHead head() {
    return record.head();
  }

  CalibrationOutcome outcome() {
    return outcome;
  }

  /** Null if the points allow no line. */
  CalibrationResult result() {
    return outcome.result();
  }

  /** Null without a plausible line. */
  UncertaintyModel uncertainty() {
    return outcome.uncertainty();
  }

  ControlChart chart() {
    return chart;
  }

  List<SheetPoint> points() {
    return points;
  }

  LocalDate today() {
    return today;
  }

  String unit() {
    return record.channel().unit();
  }

  ZonedDateTime local(long wallMillis) {
    return Instant.ofEpochMilli(wallMillis).atZone(zone);
  }

  /** Date, time of day and zone. */
  String moment(long wallMillis) {
    ZonedDateTime time = local(wallMillis);
    return time.toLocalDate() + " " + TimesOfDay.clock(time);
  }

  String zoneName() {
    return zone.getId();
  }

  /** What the record stands at, the last word first. */
  CalibrationStatus status() {
    if (record.withdrawal() != null) {
      return CalibrationStatus.WITHDRAWN;
    }
    return record.isUnderWay()
        ? CalibrationStatus.UNDER_WAY
        : switch (record.finish().ending()) {
          case ACCEPTED -> CalibrationStatus.ACCEPTED;
          case REFUSED -> CalibrationStatus.REFUSED;
          case ABANDONED -> CalibrationStatus.ABANDONED;
        };
  }

  /** True if it was accepted, still stands, and is past its day. */
  boolean isOverdue() {
    return status() == CalibrationStatus.ACCEPTED && !today.isBefore(record.finish().nextDue());
  }

  /**
   * Budgets at zero, half and full scale of the side that was calibrated; none without a plausible
   * line.
   */
  List<UncertaintyBudget> budgets() {
    if (uncertainty() == null) {
      return List.of();
    }
    double end = uncertainty().high() > 0 ? head().fullScale() : -head().fullScale();
    return List.of(uncertainty().at(0), uncertainty().at(end / 2), uncertainty().at(end));
  }

  /** What stands against it: the words of the record, one a reason where they can be told apart. */
  List<String> objections() {
    List<String> computed = outcome.verdict().refusals().stream().map(Refusal::message).toList();
    CalibrationFinish finish = record.finish();
    if (finish == null || finish.ending() == Ending.ACCEPTED) {
      return computed;
    }
    boolean same = finish.note().equals(String.join("; ", computed));
    return same || finish.note().isBlank() ? computed : List.of(finish.note());
  }

  /** Where record and recomputation part; empty if they agree or nothing was signed. */
  List<String> disagreements() {
    return Disagreements.of(record, outcome);
  }

  /** An uncertainty whose digits suit readings of single points. */
  double pointDetail() {
    double step = 10 * head().meter().resolution();
    double scatter = result() == null ? 0 : result().line().residualStandardDeviation();
    return step > 0 && (step < scatter || scatter == 0) ? step : scatter;
  }

  private List<SheetPoint> sheetPoints() {
    Map<CalibrationPoint, PointResidual> fits =
        result() == null
            ? Map.of()
            : result().residuals().stream()
                .collect(Collectors.toMap(PointResidual::point, Function.identity(), (a, b) -> a));
    List<SheetPoint> sheet = new ArrayList<>();
    for (CalibrationPoint point : record.points()) {
      sheet.add(sheetPoint(sheet.size() + 1, point, fits.get(point)));
    }
    return List.copyOf(sheet);
  }

  private SheetPoint sheetPoint(int index, CalibrationPoint point, PointResidual fit) {
    double nominal = head().nominal().toUnits(point.meanCounts());
    double reference = point.isMeasured() ? point.reference() : Double.NaN;
    double fitted = result() == null ? Double.NaN : result().line().valueAt(nominal);
    return new SheetPoint(
        index,
        point,
        nominal,
        fit,
        fitted,
        reference - fitted,
        head().inUse().toUnits(point.meanCounts()) - reference,
        fitted - reference);
  }
}
