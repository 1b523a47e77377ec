package org.boothlamp.technique;

import java.util.List;
import org.boothlamp.judging.ChannelUncertainties;
import org.boothlamp.procedure.Characteristic;
import org.boothlamp.procedure.Pass;
import org.boothlamp.procedure.Procedure;
import org.boothlamp.procedure.Quantity;

/**
 * Reads a run's technique from what the booth log keeps of it. A pure function; costs some
 * milliseconds and creates objects, so it is not for the sampler's thread. Safe to share.
 */
public final class TechniqueReader {

  private final Procedure procedure;
  private final Pass pass;
  private final ChannelUncertainties uncertainties;
  private final LengthReader lengths;

  /**
   * A reader for runs of one pass.
   *
   * @param procedure what the run was welded to
   * @param pass the pass of it
   * @param uncertainties of both channels, k = 2
   * @param scales what the school has calibrated
   */
  public TechniqueReader(
      Procedure procedure, Pass pass, ChannelUncertainties uncertainties, SchoolScales scales) {
    this.procedure = procedure;
    this.pass = pass;
    this.uncertainties = uncertainties;
    lengths = new LengthReader(procedure, pass, uncertainties, scales);
  }

  /**
   * Reads one run.
   *
   * @param profile its trace
   * @param spells its excursions, in any order
   * @param facts what else is known of it
   */
  public TechniqueReading read(RunProfile profile, List<Spell> spells, RunFacts facts) {
    RunParts parts = new RunParts(profile, spells, procedure.process());
    PeriodicMovement movement = movement(profile);
    CauseFinder finder = new CauseFinder(profile, parts, procedure, pass, uncertainties, movement);
    List<ExplainedSpell> explained =
        spells.stream()
            .map(finder::explain)
            .map(spell -> spell.withLengthChange(lengths.changeMm(spell, facts)))
            .toList();
    return new TechniqueReading(
        explained,
        steadiness(profile, parts, facts),
        lengths.stickOutMm(facts),
        facts.transfer(),
        transferState(facts),
        facts.swings(),
        movement);
  }

  private boolean handMovesVolts() {
    return procedure.source() == Characteristic.CONSTANT_CURRENT;
  }

  private PeriodicMovement movement(RunProfile profile) {
    if (profile.isAlternating()) {
      return PeriodicMovement.NONE;
    }
    return PeriodicMovement.in(handMovesVolts() ? profile.allVolts() : profile.allAmps());
  }

  private Steadiness steadiness(RunProfile profile, RunParts parts, RunFacts facts) {
    Quantity quantity = handMovesVolts() ? Quantity.VOLTS : Quantity.AMPS;
    if (profile.isAlternating()) {
      return Steadiness.unknown(quantity, facts.arcOuts());
    }
    return Steadiness.of(quantity, profile, parts.level(), facts.arcOuts());
  }

  private TransferState transferState(RunFacts facts) {
    boolean wire = procedure.source() == Characteristic.CONSTANT_VOLTAGE;
    return wire && facts.transfer() != null
        ? facts.transfer().state(facts.meanAmps(), pass.wireMm())
        : TransferState.NOT_MEASURED;
  }
}
