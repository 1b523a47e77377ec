package org.boothlamp.boothlog;

import java.sql.SQLException;
import org.boothlamp.calibration.CalibrationNumbers;
import org.boothlamp.judging.JudgingPlan;
import org.boothlamp.monitor.LogEntry;
import org.boothlamp.monitor.SegmentEnd;
import org.boothlamp.monitor.SegmentFigures;
import org.boothlamp.procedure.Procedure;
import org.boothlamp.signal.PairScale;

/**
 * A segment with its latest figures. While it waits in a batch its figures may still grow: what
 * counts is what they are when it is written.
 */
final class SegmentRow implements LogRow {

  private static final String SAVE =
      """
      INSERT INTO segment (id, boot, trainee, procedure_id, procedure_revision, pass, process,
        calibrated, start_wall_ms, start_mono_ns, start_s,
        amps_per_count, current_zero_count, volts_per_count, voltage_zero_count, pairs_per_second,
        current_calibration, voltage_calibration, current_offset_counts, length_s, mean_amps, mean_volts, rms_amps, rms_volts, energy_j, mean_w, polarity,
        short_circuits, arc_outs, green_s, amber_s, red_s, settling_s, fault_s, missing_s, end_word)
      VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?,
        ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)
      ON CONFLICT (id) DO UPDATE SET length_s = excluded.length_s,
        mean_amps = excluded.mean_amps, mean_volts = excluded.mean_volts,
        rms_amps = excluded.rms_amps, rms_volts = excluded.rms_volts,
        energy_j = excluded.energy_j, mean_w = excluded.mean_w, polarity = excluded.polarity,
        short_circuits = excluded.short_circuits, arc_outs = excluded.arc_outs,
        green_s = excluded.green_s, amber_s = excluded.amber_s, red_s = excluded.red_s,
        settling_s = excluded.settling_s, fault_s = excluded.fault_s,
        missing_s = excluded.missing_s, end_word = excluded.end_word
      """;

  private final long id;
  private final LogEntry started = new LogEntry();
  private final SegmentFigures figures = new SegmentFigures();
  private SegmentEnd end;

  SegmentRow(long id, LogEntry started) {
    this.id = id;
    this.started.set(started);
  }

  /** Which segment of this start, from 1. */
  long id() {
    return id;
  }

  void setFigures(SegmentFigures latest) {
    figures.set(latest);
  }

  void setEnd(SegmentEnd why) {
    end = why;
  }

  @Override
  public void write(LogConnection log, LogStart start) throws SQLException {
    Binding row = log.bind(SAVE).whole(start.segment(id)).whole(start.boot());
    bindAssignment(row);
    row.whole(start.wallMillis(started.wallMillis, started.monotonicNanos))
        .whole(started.monotonicNanos)
        .real(started.startSeconds);
    bindScale(row, started.scale);
    bindCalibrations(row, started.calibrations);
    bindFigures(row);
    row.text(end == null ? null : end.word()).run();
  }

  private void bindAssignment(Binding row) throws SQLException {
    row.text(started.assignment.trainee());
    JudgingPlan plan = started.assignment.plan();
    if (plan == null) {
      row.text("").text("").text("").text("").flag(started.calibrations.isComplete());
      return;
    }
    Procedure procedure = plan.procedure();
    row.text(procedure.id())
        .text(procedure.revision())
        .text(plan.pass().name())
        .text(procedure.process().number())
        .flag(plan.isCalibrated());
  }

  private void bindScale(Binding row, PairScale scale) throws SQLException {
    row.real(scale.current().unitsPerCount())
        .real(scale.current().zeroCount())
        .real(scale.voltage().unitsPerCount())
        .real(scale.voltage().zeroCount())
        .whole(started.pairsPerSecond);
  }

  private void bindCalibrations(Binding row, CalibrationNumbers numbers) throws SQLException {
    bindNumber(row, numbers.current());
    bindNumber(row, numbers.voltage());
    if (started.zeroSeen) {
      row.whole(started.currentOffsetCounts);
    } else {
      row.unknown();
    }
  }

  private static void bindNumber(Binding row, long number) throws SQLException {
    if (number == 0) {
      row.unknown();
    } else {
      row.whole(number);
    }
  }

  private void bindFigures(Binding row) throws SQLException {
    row.real(figures.lengthSeconds)
        .real(figures.meanAmps)
        .real(figures.meanVolts)
        .real(figures.rmsAmps)
        .real(figures.rmsVolts)
        .real(figures.energyJoules)
        .real(figures.meanWatts)
        .text(figures.polarity.word())
        .whole(figures.shortCircuits)
        .whole(figures.arcOuts)
        .real(figures.greenSeconds)
        .real(figures.amberSeconds)
        .real(figures.redSeconds)
        .real(figures.settlingSeconds)
        .real(figures.faultSeconds)
        .real(figures.missingSeconds);
  }
}
