package org.boothlamp.sync;

import java.sql.SQLException;
import java.util.List;
import org.boothlamp.judging.Side;
import org.boothlamp.procedure.Quantity;
import org.boothlamp.technique.Beat;
import org.boothlamp.technique.Cause;
import org.boothlamp.technique.Doubt;
import org.boothlamp.technique.Estimate;
import org.boothlamp.technique.Evidence;
import org.boothlamp.technique.ExplainedSpell;
import org.boothlamp.technique.Reference;
import org.boothlamp.technique.Spell;
import org.boothlamp.technique.Steadiness;
import org.boothlamp.technique.SwingFigures;
import org.boothlamp.technique.TechniqueReading;
import org.boothlamp.technique.TransferFigures;
import org.boothlamp.technique.TransferState;

/** The technique of runs as a database holds it. Safe to share. */
final class PostgresTechnique {

  private static final String COLUMNS = "SELECT c.from_booth, c.from_log, c.segment_id, ";

  /** Ends where the condition on {@code c} and {@code s} begins. */
  static final String FIGURES =
      COLUMNS
          + "c.steady_quantity, c.level, c.spread, c.drift_per_min, c.steady_after_s, c.restarts,"
          + " c.stick_out_mm, c.stick_out_u_mm, c.shorts_per_s, c.cycle_s, c.cycle_deviation_s,"
          + " c.short_s, c.shorted_share, c.irregularity, c.short_amps, c.short_peak_amps,"
          + " c.transfer, c.swing_hz, c.upper_share, c.upper_amps, c.lower_amps, c.beat_s,"
          + " c.beat_strength"
          + " FROM boothlamp.current_segment s JOIN boothlamp.current_technique c ON c";

  /** Likewise. */
  static final String CAUSES =
      COLUMNS
          + "e.quantity, e.side, e.start_s, e.length_s, c.cause, c.doubt, c.confidence,"
          + " c.reference, c.spell_amps, c.spell_volts, c.delta_amps, c.delta_volts,"
          + " c.delta_amps_u, c.delta_volts_u, c.slope, c.slope_u, c.length_change_mm,"
          + " c.length_change_u_mm"
          + " FROM boothlamp.current_segment s JOIN boothlamp.current_excursion e"
          + " ON e.from_booth = s.from_booth AND e.from_log = s.from_log AND e.segment_id = s.id"
          + " JOIN boothlamp.current_excursion_cause c ON c.number = e.number AND c";

  private PostgresTechnique() {}

  /** Arguments are taken in the order of the columns, which is that of the records. */
  static TechniqueReading figures(PostgresReport.Row row) throws SQLException {
    return new TechniqueReading(
        List.of(),
        new Steadiness(
            row.word(Quantity.values(), Quantity::key),
            row.real(),
            row.real(),
            row.real(),
            row.real(),
            (int) row.whole()),
        new Estimate(row.real(), row.real()),
        transfer(row),
        row.word(TransferState.values(), TransferState::word),
        swings(row),
        new Beat(row.real(), row.real()));
  }

  private static TransferFigures transfer(PostgresReport.Row row) throws SQLException {
    TransferFigures transfer =
        new TransferFigures(
            row.real(),
            row.real(),
            row.real(),
            row.real(),
            row.real(),
            row.real(),
            row.real(),
            row.real());
    return Double.isNaN(transfer.shortsPerSecond()) ? null : transfer;
  }

  private static SwingFigures swings(PostgresReport.Row row) throws SQLException {
    SwingFigures swings = new SwingFigures(row.real(), row.real(), row.real(), row.real());
    return Double.isNaN(swings.hertz()) ? null : swings;
  }

  /** Likewise. */
  static ExplainedSpell cause(PostgresReport.Row row) throws SQLException {
    Spell spell =
        Spell.lasting(
            row.word(Quantity.values(), Quantity::key),
            row.word(Side.values(), Side::word),
            row.real(),
            row.real());
    Cause cause = row.word(Cause.values(), Cause::word);
    Doubt doubt = row.word(Doubt.values(), Doubt::word);
    double confidence = row.real();
    return new ExplainedSpell(
        spell, cause, doubt, evidence(row), confidence, new Estimate(row.real(), row.real()));
  }

  private static Evidence evidence(PostgresReport.Row row) throws SQLException {
    return new Evidence(
        row.word(Reference.values(), Reference::word),
        row.real(),
        row.real(),
        row.real(),
        row.real(),
        row.real(),
        row.real(),
        row.real(),
        row.real());
  }
}
