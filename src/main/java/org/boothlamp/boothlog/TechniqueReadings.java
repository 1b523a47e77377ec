package org.boothlamp.boothlog;

import java.sql.SQLException;
import java.util.List;
import org.boothlamp.judging.Side;
import org.boothlamp.procedure.Quantity;
import org.boothlamp.technique.Cause;
import org.boothlamp.technique.Doubt;
import org.boothlamp.technique.ExplainedSpell;
import org.boothlamp.technique.Reference;
import org.boothlamp.technique.TechniqueReading;
import org.boothlamp.technique.TransferState;

/** Each run's technique as stored, read beside the runs in order. Confined to one thread. */
final class TechniqueReadings implements AutoCloseable {

  /** The figures; {@code s} is the segment. */
  static final String FIGURES =
      "SELECT s.id, "
          + StoredWords.STEADY_QUANTITIES.place()
          + ", t.level, t.spread, t.drift_per_min, t.steady_after_s, t.restarts, t.stick_out_mm,"
          + " t.stick_out_u_mm, t.shorts_per_s, t.cycle_s, t.cycle_deviation_s, t.short_s,"
          + " t.shorted_share, t.irregularity, t.short_amps, t.short_peak_amps, "
          + StoredWords.TRANSFERS.place()
          + ", t.swing_hz, t.upper_share, t.upper_amps, t.lower_amps, t.beat_s, t.beat_strength"
          + " FROM segment s CROSS JOIN technique t ON t.segment_id = s.id";

  /** The causes, likewise; {@code c.number} orders those of a segment. */
  static final String CAUSES =
      "SELECT s.id, "
          + StoredWords.QUANTITIES.place()
          + ", "
          + StoredWords.SIDES.place()
          + ", e.start_s, e.length_s, "
          + StoredWords.CAUSES.place()
          + ", "
          + StoredWords.DOUBTS.place()
          + ", c.confidence, "
          + StoredWords.REFERENCES.place()
          + ", c.spell_amps, c.spell_volts, c.delta_amps, c.delta_volts, c.delta_amps_u,"
          + " c.delta_volts_u, c.slope, c.slope_u, c.length_change_mm, c.length_change_u_mm"
          + " FROM segment s CROSS JOIN excursion_cause c ON c.segment_id = s.id"
          + " CROSS JOIN excursion e ON e.segment_id = c.segment_id AND e.number = c.number";

  private final SegmentChildren<TechniqueReading> figures;
  private final SegmentChildren<ExplainedSpell> causes;

  /**
   * Takes the rows of {@link #FIGURES} and {@link #CAUSES}, in the order of their segments; closes
   * neither if it fails.
   */
  TechniqueReadings(Columns figures, Columns causes) throws SQLException {
    this.figures = new SegmentChildren<>(figures, row -> StoredTechnique.figures(new Stored(row)));
    this.causes = new SegmentChildren<>(causes, row -> StoredTechnique.cause(new Stored(row)));
  }

  /** That of the next segment in order; null if it was not read. */
  TechniqueReading of(long id) throws SQLException {
    List<TechniqueReading> found = figures.of(id);
    List<ExplainedSpell> spells = causes.of(id);
    return found.isEmpty() ? null : found.get(0).withSpells(spells);
  }

  /** Words come out as their places, see {@link StoredWords}. */
  private record Stored(Columns row) implements StoredTechnique.Row {

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
      return StoredWords.QUANTITIES.of(row);
    }

    @Override
    public Side side() throws SQLException {
      return StoredWords.SIDES.of(row);
    }

    @Override
    public Cause cause() throws SQLException {
      return StoredWords.CAUSES.of(row);
    }

    @Override
    public Doubt doubt() throws SQLException {
      return StoredWords.DOUBTS.of(row);
    }

    @Override
    public Reference reference() throws SQLException {
      return StoredWords.REFERENCES.of(row);
    }

    @Override
    public TransferState transfer() throws SQLException {
      return StoredWords.TRANSFERS.of(row);
    }

    @Override
    public Quantity steadyQuantity() throws SQLException {
      return StoredWords.STEADY_QUANTITIES.of(row);
    }
  }

  @Override
  public void close() throws SQLException {
    try {
      figures.close();
    } finally {
      causes.close();
    }
  }
}
