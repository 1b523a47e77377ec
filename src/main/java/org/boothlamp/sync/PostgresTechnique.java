package org.boothlamp.sync;

import java.sql.SQLException;
import org.boothlamp.boothlog.StoredTechnique;
import org.boothlamp.judging.Side;
import org.boothlamp.procedure.Quantity;
import org.boothlamp.technique.Cause;
import org.boothlamp.technique.Doubt;
import org.boothlamp.technique.ExplainedSpell;
import org.boothlamp.technique.Reference;
import org.boothlamp.technique.TechniqueReading;
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

  static TechniqueReading figures(PostgresReport.Row row) throws SQLException {
    return StoredTechnique.figures(new Sent(row));
  }

  static ExplainedSpell cause(PostgresReport.Row row) throws SQLException {
    return StoredTechnique.cause(new Sent(row));
  }

  private record Sent(PostgresReport.Row row) implements StoredTechnique.Row {

    @Override
    public double real() throws SQLException {
      return row.real();
    }

    @Override
    public long whole() throws SQLException {
      return row.whole();
    }

    @Override
    public Quantity quantity() throws SQLException {
      return row.word(Quantity.values(), Quantity::key);
    }

    @Override
    public Side side() throws SQLException {
      return row.word(Side.values(), Side::word);
    }

    @Override
    public Cause cause() throws SQLException {
      return row.word(Cause.values(), Cause::word);
    }

    @Override
    public Doubt doubt() throws SQLException {
      return row.word(Doubt.values(), Doubt::word);
    }

    @Override
    public Reference reference() throws SQLException {
      return row.word(Reference.values(), Reference::word);
    }

    @Override
    public TransferState transfer() throws SQLException {
      return row.word(TransferState.values(), TransferState::word);
    }

    @Override
    public Quantity steadyQuantity() throws SQLException {
      return quantity();
    }
  }
}
