package org.boothlamp.boothlog;

import java.sql.SQLException;
import java.util.List;
import org.boothlamp.technique.Beat;
import org.boothlamp.technique.Cause;
import org.boothlamp.technique.Doubt;
import org.boothlamp.technique.Estimate;
import org.boothlamp.technique.Evidence;
import org.boothlamp.technique.ExplainedSpell;
import org.boothlamp.technique.Spell;
import org.boothlamp.technique.Steadiness;
import org.boothlamp.technique.SwingFigures;
import org.boothlamp.technique.TechniqueReading;
import org.boothlamp.technique.TransferFigures;

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
    this.figures = new SegmentChildren<>(figures, TechniqueReadings::figures);
    this.causes = new SegmentChildren<>(causes, TechniqueReadings::cause);
  }

  /** That of the next segment in order; null if it was not read. */
  TechniqueReading of(long id) throws SQLException {
    List<TechniqueReading> found = figures.of(id);
    List<ExplainedSpell> spells = causes.of(id);
    return found.isEmpty() ? null : found.get(0).withSpells(spells);
  }

  /** Arguments are taken in the order of the columns, which is that of the records. */
  private static TechniqueReading figures(Columns row) throws SQLException {
    return new TechniqueReading(
        List.of(),
        new Steadiness(
            StoredWords.STEADY_QUANTITIES.of(row),
            row.real(),
            row.real(),
            row.real(),
            row.real(),
            (int) row.whole()),
        new Estimate(row.real(), row.real()),
        transfer(row),
        StoredWords.TRANSFERS.of(row),
        swings(row),
        new Beat(row.real(), row.real()));
  }

  private static TransferFigures transfer(Columns row) throws SQLException {
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

  private static SwingFigures swings(Columns row) throws SQLException {
    SwingFigures swings = new SwingFigures(row.real(), row.real(), row.real(), row.real());
    return Double.isNaN(swings.hertz()) ? null : swings;
  }

  private static ExplainedSpell cause(Columns row) throws SQLException {
    Spell spell =
        Spell.lasting(
            StoredWords.QUANTITIES.of(row), StoredWords.SIDES.of(row), row.real(), row.real());
    Cause cause = StoredWords.CAUSES.of(row);
    Doubt doubt = StoredWords.DOUBTS.of(row);
    double confidence = row.real();
    return new ExplainedSpell(
        spell, cause, doubt, evidence(row), confidence, new Estimate(row.real(), row.real()));
  }

  private static Evidence evidence(Columns row) throws SQLException {
    return new Evidence(
        StoredWords.REFERENCES.of(row),
        row.real(),
        row.real(),
        row.real(),
        row.real(),
        row.real(),
        row.real(),
        row.real(),
        row.real());
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
