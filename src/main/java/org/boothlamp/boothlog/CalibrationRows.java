package org.boothlamp.boothlog;

import java.sql.SQLException;
import java.util.Arrays;
import java.util.Locale;
import java.util.function.Function;
import org.boothlamp.calibration.AccuracyClass;
import org.boothlamp.calibration.CalibrationCheck;
import org.boothlamp.calibration.CalibrationFinish;
import org.boothlamp.calibration.CalibrationHead;
import org.boothlamp.calibration.CalibrationPoint;
import org.boothlamp.calibration.CalibrationRules;
import org.boothlamp.calibration.Channel;
import org.boothlamp.calibration.ReferenceMeter;
import org.boothlamp.calibration.Withdrawal;
import org.boothlamp.signal.ChannelScale;

/** Writes the rows of calibrations, and knows the words in them. */
final class CalibrationRows {

  /** Columns of a head, in the order of its fields. */
  static final String HEAD_COLUMNS =
      "booth, channel, nominal_units_per_count, nominal_zero_count, full_scale, date,"
          + " started_wall_ms, technician, meter_make, meter_serial_number,"
          + " meter_certificate_number, meter_certificate_date, meter_percent_of_reading,"
          + " meter_counts, meter_resolution, in_use_units_per_count, in_use_zero_count,"
          + " in_use_number, class_name, class_share_of_full_scale, class_share_of_reading,"
          + " weighting, smallest_levels, smallest_span_share, largest_linearity_share,"
          + " largest_hysteresis_share, smallest_reference_ratio, temperature_zero_half_width,"
          + " temperature_gain_half_width, certificate_months, calibration_months";

  private static final String INSERT_HEAD =
      "INSERT INTO calibration ("
          + HEAD_COLUMNS
          + ") VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?,"
          + " ?, ?, ?, ?, ?)";
  private static final String INSERT_POINT =
      "INSERT INTO calibration_point (calibration_id, number, level, direction, mean_counts,"
          + " standard_deviation_counts, readings, drift_counts, reference)"
          + " VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?)";
  private static final String INSERT_DISCARD =
      "INSERT INTO calibration_discard (calibration_id, number, reason) VALUES (?, ?, ?)";
  private static final String INSERT_FINISH =
      "INSERT INTO calibration_finish (calibration_id, ending, wall_ms, units_per_count,"
          + " zero_count, u_constant, u_proportional, next_due, note)"
          + " VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?)";
  private static final String INSERT_WITHDRAWAL =
      "INSERT INTO calibration_withdrawal (calibration_id, from_wall_ms, wall_ms, technician,"
          + " reason) VALUES (?, ?, ?, ?, ?)";
  private static final String INSERT_CHECK =
      "INSERT INTO calibration_check (channel, calibration_number, wall_ms, technician, meter,"
          + " reference, reading, standard_deviation, readings, error_limit)"
          + " VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?)";

  private CalibrationRows() {}

  /** Writes a head and returns its number. */
  static long insert(LogConnection log, CalibrationHead head) throws SQLException {
    Binding row = log.bind(INSERT_HEAD);
    row.text(head.booth()).text(head.channel().word());
    bindScale(row, head.nominal());
    row.real(head.fullScale()).text(head.date().toString());
    row.whole(head.startedWallMillis()).text(head.technicianCode());
    bindMeter(row, head.meter());
    bindScale(row, head.inUse());
    row.whole(head.inUseNumber());
    bindRules(row, head.rules());
    row.run();
    return log.number("SELECT last_insert_rowid()");
  }

  private static void bindScale(Binding row, ChannelScale scale) throws SQLException {
    row.real(scale.unitsPerCount()).real(scale.zeroCount());
  }

  private static void bindMeter(Binding row, ReferenceMeter meter) throws SQLException {
    row.text(meter.make()).text(meter.serialNumber()).text(meter.certificateNumber());
    row.text(meter.certificateDate().toString());
    row.real(meter.accuracyPercentOfReading()).real(meter.accuracyCounts());
    row.real(meter.resolution());
  }

  private static void bindRules(Binding row, CalibrationRules rules) throws SQLException {
    AccuracyClass accuracyClass = rules.accuracyClass();
    row.text(accuracyClass.name()).real(accuracyClass.shareOfFullScale());
    row.real(accuracyClass.shareOfReading()).text(word(rules.weighting()));
    row.whole(rules.smallestLevels()).real(rules.smallestSpanShare());
    row.real(rules.largestLinearityShare()).real(rules.largestHysteresisShare());
    row.real(rules.smallestReferenceRatio());
    row.real(rules.temperature().zeroHalfWidth()).real(rules.temperature().gainHalfWidth());
    row.whole(rules.certificateMonths()).whole(rules.calibrationMonths());
  }

  static void insert(LogConnection log, long number, long index, CalibrationPoint point)
      throws SQLException {
    log.bind(INSERT_POINT)
        .whole(number)
        .whole(index)
        .real(point.level())
        .text(word(point.direction()))
        .real(point.meanCounts())
        .real(point.standardDeviationCounts())
        .whole(point.readings())
        .real(point.driftCounts())
        .real(point.reference())
        .run();
    if (point.isDiscarded()) {
      insertDiscard(log, number, index, point.discardReason());
    }
  }

  static void insertDiscard(LogConnection log, long number, long index, String reason)
      throws SQLException {
    log.bind(INSERT_DISCARD).whole(number).whole(index).text(reason).run();
  }

  static void insert(LogConnection log, long number, CalibrationFinish finish) throws SQLException {
    boolean accepted = finish.ending() == CalibrationFinish.Ending.ACCEPTED;
    Binding row = log.bind(INSERT_FINISH).whole(number).text(finish.ending().word());
    row.whole(finish.wallMillis());
    row.real(accepted ? finish.scale().unitsPerCount() : Double.NaN);
    row.real(accepted ? finish.scale().zeroCount() : Double.NaN);
    row.real(accepted ? finish.uncertainty().constant() : Double.NaN);
    row.real(accepted ? finish.uncertainty().proportional() : Double.NaN);
    row.text(accepted ? finish.nextDue().toString() : null).text(finish.note()).run();
  }

  static void insert(LogConnection log, long number, Withdrawal withdrawal) throws SQLException {
    log.bind(INSERT_WITHDRAWAL)
        .whole(number)
        .whole(withdrawal.fromWallMillis())
        .whole(withdrawal.wallMillis())
        .text(withdrawal.technicianCode())
        .text(withdrawal.reason())
        .run();
  }

  static void insert(LogConnection log, CalibrationCheck check) throws SQLException {
    log.bind(INSERT_CHECK)
        .text(check.channel().word())
        .whole(check.calibrationNumber())
        .whole(check.wallMillis())
        .text(check.technicianCode())
        .text(check.meter())
        .real(check.reference())
        .real(check.reading())
        .real(check.standardDeviation())
        .whole(check.readings())
        .real(check.limit())
        .run();
  }

  static Channel channel(String word) {
    return wordOf(Channel.values(), Channel::word, word, "channel");
  }

  static CalibrationFinish.Ending ending(String word) {
    return wordOf(
        CalibrationFinish.Ending.values(), CalibrationFinish.Ending::word, word, "ending");
  }

  /** The constant with this word; words are the names in small letters with hyphens. */
  static <E extends Enum<E>> E enumOf(E[] values, String word, String column) {
    return wordOf(values, CalibrationRows::word, word, column);
  }

  private static String word(Enum<?> value) {
    return value.name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  private static <T> T wordOf(
      T[] values, Function<? super T, String> toWord, String word, String column) {
    return Arrays.stream(values)
        .filter(value -> toWord.apply(value).equals(word))
        .findFirst()
        .orElseThrow(
            () ->
                new IllegalStateException(
                    "column "
                        + column
                        + " holds \""
                        + word
                        + "\", which is no word of this program"));
  }
}
