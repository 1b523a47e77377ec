package org.boothlamp.boothlog;

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

/**
 * Technique out of the columns in which any database holds it. Arguments are taken in the order of
 * the columns, which is that of the records. Stateless.
 */
public final class StoredTechnique {

  /** A row whose values are taken from left to right; a NULL number comes out as NaN. */
  public interface Row {

    double real() throws SQLException;

    long whole() throws SQLException;

    Quantity quantity() throws SQLException;

    Side side() throws SQLException;

    Cause cause() throws SQLException;

    Doubt doubt() throws SQLException;

    Reference reference() throws SQLException;

    TransferState transfer() throws SQLException;

    /** The quantity that was to be steady. */
    Quantity steadyQuantity() throws SQLException;
  }

  private StoredTechnique() {}

  /** The figures of a run, without its spells. */
  public static TechniqueReading figures(Row row) throws SQLException {
    return new TechniqueReading(
        List.of(),
        new Steadiness(
            row.steadyQuantity(),
            row.real(),
            row.real(),
            row.real(),
            row.real(),
            (int) row.whole()),
        new Estimate(row.real(), row.real()),
        transfer(row),
        row.transfer(),
        swings(row),
        new Beat(row.real(), row.real()));
  }

  private static TransferFigures transfer(Row row) throws SQLException {
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

  private static SwingFigures swings(Row row) throws SQLException {
    SwingFigures swings = new SwingFigures(row.real(), row.real(), row.real(), row.real());
    return Double.isNaN(swings.hertz()) ? null : swings;
  }

  /** One spell outside a window, and why. */
  public static ExplainedSpell cause(Row row) throws SQLException {
    Spell spell = Spell.lasting(row.quantity(), row.side(), row.real(), row.real());
    Cause cause = row.cause();
    Doubt doubt = row.doubt();
    double confidence = row.real();
    return new ExplainedSpell(
        spell, cause, doubt, evidence(row), confidence, new Estimate(row.real(), row.real()));
  }

  private static Evidence evidence(Row row) throws SQLException {
    return new Evidence(
        row.reference(),
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
