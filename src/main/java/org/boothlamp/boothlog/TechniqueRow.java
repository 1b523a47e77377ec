package org.boothlamp.boothlog;

import java.sql.SQLException;
import org.boothlamp.technique.Estimate;
import org.boothlamp.technique.Evidence;
import org.boothlamp.technique.ExplainedSpell;
import org.boothlamp.technique.Steadiness;
import org.boothlamp.technique.SwingFigures;
import org.boothlamp.technique.TechniqueReading;
import org.boothlamp.technique.TransferFigures;

/**
 * What an ended segment says of its technique, with the cause of each excursion. Immutable.
 *
 * @param segmentId which segment of this start, from 1
 * @param reading its spells are the segment's excursions, in their order
 */
record TechniqueRow(long segmentId, TechniqueReading reading) implements LogRow {

  private static final String INSERT =
      """
      INSERT INTO technique (segment_id, steady_quantity, level, spread, drift_per_min, steady_after_s, restarts,
        stick_out_mm, stick_out_u_mm, shorts_per_s, cycle_s, cycle_deviation_s, short_s,
        shorted_share, irregularity, short_amps, short_peak_amps, transfer, swing_hz, upper_share,
        upper_amps, lower_amps, beat_s, beat_strength)
      VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)
      ON CONFLICT (segment_id) DO NOTHING
      """;

  private static final String INSERT_CAUSE =
      """
      INSERT INTO excursion_cause (segment_id, number, cause, doubt, confidence, reference,
        spell_amps, spell_volts, delta_amps, delta_volts, delta_amps_u, delta_volts_u, slope,
        slope_u, length_change_mm, length_change_u_mm)
      VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)
      ON CONFLICT (segment_id, number) DO NOTHING
      """;

  @Override
  public void write(LogConnection log, LogStart start) throws SQLException {
    long segment = start.segment(segmentId);
    writeFigures(log.bind(INSERT).whole(segment));
    int number = 0;
    for (ExplainedSpell spell : reading.spells()) {
      writeCause(log.bind(INSERT_CAUSE).whole(segment).whole(number++), spell);
    }
  }

  private void writeFigures(Binding row) throws SQLException {
    Steadiness hand = reading.steadiness();
    row.text(hand.quantity().key());
    bind(row, hand.level(), hand.spread(), hand.driftPerMinute(), hand.steadyAfterSeconds());
    row.whole(hand.restarts());
    bind(row, reading.stickOutMm());
    bind(row, reading.transfer());
    row.text(reading.transferState().word());
    bind(row, reading.swings());
    bind(row, reading.beat().periodSeconds(), reading.beat().strength());
    row.run();
  }

  private static void writeCause(Binding row, ExplainedSpell spell) throws SQLException {
    Evidence evidence = spell.evidence();
    row.text(spell.cause().word()).text(spell.doubt().word());
    bind(row, spell.confidence());
    row.text(evidence.reference().word());
    bind(row, evidence.spellAmps(), evidence.spellVolts());
    bind(row, evidence.deltaAmps(), evidence.deltaVolts());
    bind(row, evidence.deltaAmpsUncertainty(), evidence.deltaVoltsUncertainty());
    bind(row, evidence.sourceSlope(), evidence.sourceSlopeUncertainty());
    bind(row, spell.lengthChangeMm());
    row.run();
  }

  private static void bind(Binding row, TransferFigures transfer) throws SQLException {
    if (transfer == null) {
      bindUnknown(row, 8);
      return;
    }
    bind(row, transfer.shortsPerSecond(), transfer.meanCycleSeconds());
    bind(row, transfer.cycleDeviationSeconds(), transfer.meanShortSeconds());
    bind(row, transfer.shortedShare(), transfer.irregularity());
    bind(row, transfer.meanShortAmps(), transfer.meanPeakAmps());
  }

  private static void bind(Binding row, SwingFigures swings) throws SQLException {
    if (swings == null) {
      bindUnknown(row, 4);
      return;
    }
    bind(row, swings.hertz(), swings.upperShare(), swings.upperAmps(), swings.lowerAmps());
  }

  private static void bind(Binding row, Estimate estimate) throws SQLException {
    bind(row, estimate.value(), estimate.uncertainty());
  }

  /** What is not finite is not known. */
  private static void bind(Binding row, double... values) throws SQLException {
    for (double value : values) {
      row.real(Double.isFinite(value) ? value : Double.NaN);
    }
  }

  private static void bindUnknown(Binding row, int columns) throws SQLException {
    for (int i = 0; i < columns; i++) {
      row.unknown();
    }
  }
}
