package org.boothlamp.technique;

import java.util.List;

/**
 * What amps and volts say of the technique of one run. Immutable.
 *
 * @param spells every excursion with its one cause, in the order they were given
 * @param steadiness how steady the hand was
 * @param stickOutMm stick-out of wire over the whole run; unknown where physics does not allow it
 * @param transfer short-circuit transfer, or null if not measured
 * @param transferState what that says
 * @param swings pulses or alternating current, or null if none
 * @param movement whipping or weaving
 */
public record TechniqueReading(
    List<ExplainedSpell> spells,
    Steadiness steadiness,
    Estimate stickOutMm,
    TransferFigures transfer,
    TransferState transferState,
    SwingFigures swings,
    PeriodicMovement movement) {

  public TechniqueReading {
    spells = List.copyOf(spells);
  }

  /** How many spells have a cause. */
  public long count(Cause cause) {
    return spells.stream().filter(spell -> spell.cause() == cause).count();
  }
}
