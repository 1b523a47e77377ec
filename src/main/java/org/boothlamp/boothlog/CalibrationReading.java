package org.boothlamp.boothlog;

import java.sql.SQLException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.boothlamp.calibration.AccuracyClass;
import org.boothlamp.calibration.CalibrationCheck;
import org.boothlamp.calibration.CalibrationFinish;
import org.boothlamp.calibration.CalibrationHead;
import org.boothlamp.calibration.CalibrationHistory;
import org.boothlamp.calibration.CalibrationPoint;
import org.boothlamp.calibration.CalibrationRecord;
import org.boothlamp.calibration.CalibrationRules;
import org.boothlamp.calibration.Channel;
import org.boothlamp.calibration.Direction;
import org.boothlamp.calibration.ReferenceMeter;
import org.boothlamp.calibration.TemperatureAllowance;
import org.boothlamp.calibration.Weighting;
import org.boothlamp.calibration.Withdrawal;
import org.boothlamp.judging.ExpandedUncertainty;
import org.boothlamp.signal.ChannelScale;

/**
 * Reads all calibrations of a log, or of tables that are like those of a log. To be run inside one
 * transaction. Confined to one thread.
 *
 * <p>Values are taken from left to right; Java evaluates arguments in that order.
 */
final class CalibrationReading {

  private static final String POINTS =
      "calibration_id, number, level, direction, mean_counts, standard_deviation_counts, readings,"
          + " drift_counts, reference";
  private static final String FINISHES =
      "calibration_id, ending, wall_ms, units_per_count, zero_count, u_constant, u_proportional,"
          + " next_due, note";
  private static final String WITHDRAWALS =
      "calibration_id, from_wall_ms, wall_ms, technician, reason";
  private static final String CHECKS =
      "SELECT calibration_number, wall_ms, technician, meter, reference, reading,"
          + " standard_deviation, readings, error_limit FROM calibration_check"
          + " WHERE channel = ? ORDER BY wall_ms, id";

  /** A point of a calibration by its place in the record. */
  private record PointKey(long calibration, long number) {}

  private CalibrationReading() {}

  static CalibrationHistory history(LogConnection log) throws SQLException {
    return history(
        (columns, table, order) ->
            log.bind("SELECT " + columns + " FROM " + table + " ORDER BY " + order).rows());
  }

  static CalibrationHistory history(CalibrationTables tables) throws SQLException {
    Map<Long, List<CalibrationPoint>> points = points(tables);
    Map<Long, CalibrationFinish> finishes = finishes(tables);
    Map<Long, Withdrawal> withdrawals = withdrawals(tables);
    List<CalibrationRecord> records = new ArrayList<>();
    try (Columns row = tables.rows("id, " + CalibrationRows.HEAD_COLUMNS, "calibration", "id")) {
      while (row.next()) {
        long number = row.whole();
        records.add(
            new CalibrationRecord(
                number,
                head(row),
                points.getOrDefault(number, List.of()),
                finishes.get(number),
                withdrawals.get(number)));
      }
    }
    return new CalibrationHistory(records);
  }

  private static CalibrationHead head(Columns row) throws SQLException {
    return new CalibrationHead(
        row.text(),
        CalibrationRows.channel(row.text()),
        scale(row),
        row.real(),
        LocalDate.parse(row.text()),
        row.whole(),
        row.text(),
        meter(row),
        scale(row),
        row.whole(),
        rules(row));
  }

  private static ChannelScale scale(Columns row) throws SQLException {
    return new ChannelScale(row.real(), row.real());
  }

  private static ReferenceMeter meter(Columns row) throws SQLException {
    return new ReferenceMeter(
        row.text(),
        row.text(),
        row.text(),
        LocalDate.parse(row.text()),
        row.real(),
        row.real(),
        row.real());
  }

  private static CalibrationRules rules(Columns row) throws SQLException {
    return new CalibrationRules(
        new AccuracyClass(row.text(), row.real(), row.real()),
        CalibrationRows.enumOf(Weighting.values(), row.text(), "weighting"),
        (int) row.whole(),
        row.real(),
        row.real(),
        row.real(),
        row.real(),
        new TemperatureAllowance(row.real(), row.real()),
        (int) row.whole(),
        (int) row.whole());
  }

  private static Map<Long, List<CalibrationPoint>> points(CalibrationTables tables)
      throws SQLException {
    Map<PointKey, String> reasons = reasons(tables);
    Map<Long, List<CalibrationPoint>> points = new HashMap<>();
    try (Columns row = tables.rows(POINTS, "calibration_point", "calibration_id, number")) {
      while (row.next()) {
        PointKey key = new PointKey(row.whole(), row.whole());
        points
            .computeIfAbsent(key.calibration(), number -> new ArrayList<>())
            .add(point(row, reasons.get(key)));
      }
    }
    return points;
  }

  /** Why points were thrown away. */
  private static Map<PointKey, String> reasons(CalibrationTables tables) throws SQLException {
    Map<PointKey, String> reasons = new HashMap<>();
    try (Columns row =
        tables.rows(
            "calibration_id, number, reason", "calibration_discard", "calibration_id, number")) {
      while (row.next()) {
        reasons.put(new PointKey(row.whole(), row.whole()), row.text());
      }
    }
    return reasons;
  }

  private static CalibrationPoint point(Columns row, String discardReason) throws SQLException {
    return new CalibrationPoint(
        row.real(),
        CalibrationRows.enumOf(Direction.values(), row.text(), "direction"),
        row.real(),
        row.real(),
        row.whole(),
        row.real(),
        row.real(),
        discardReason);
  }

  private static Map<Long, CalibrationFinish> finishes(CalibrationTables tables)
      throws SQLException {
    Map<Long, CalibrationFinish> finishes = new HashMap<>();
    try (Columns row = tables.rows(FINISHES, "calibration_finish", "calibration_id")) {
      while (row.next()) {
        finishes.put(row.whole(), finish(row));
      }
    }
    return finishes;
  }

  private static CalibrationFinish finish(Columns row) throws SQLException {
    CalibrationFinish.Ending ending = CalibrationRows.ending(row.text());
    long wallMillis = row.whole();
    double unitsPerCount = row.real();
    double zeroCount = row.real();
    double constant = row.real();
    double proportional = row.real();
    String nextDue = row.text();
    if (ending != CalibrationFinish.Ending.ACCEPTED) {
      return new CalibrationFinish(ending, wallMillis, null, null, null, row.text());
    }
    return new CalibrationFinish(
        ending,
        wallMillis,
        new ChannelScale(unitsPerCount, zeroCount),
        new ExpandedUncertainty(constant, proportional),
        LocalDate.parse(nextDue),
        row.text());
  }

  private static Map<Long, Withdrawal> withdrawals(CalibrationTables tables) throws SQLException {
    Map<Long, Withdrawal> withdrawals = new HashMap<>();
    try (Columns row = tables.rows(WITHDRAWALS, "calibration_withdrawal", "calibration_id")) {
      while (row.next()) {
        withdrawals.put(
            row.whole(), new Withdrawal(row.whole(), row.whole(), row.text(), row.text()));
      }
    }
    return withdrawals;
  }

  static List<CalibrationCheck> checks(LogConnection log, Channel channel) throws SQLException {
    List<CalibrationCheck> checks = new ArrayList<>();
    try (Columns row = log.bind(CHECKS).text(channel.word()).rows()) {
      while (row.next()) {
        checks.add(
            new CalibrationCheck(
                channel,
                row.whole(),
                row.whole(),
                row.text(),
                row.text(),
                row.real(),
                row.real(),
                row.real(),
                row.whole(),
                row.real()));
      }
    }
    return checks;
  }
}
