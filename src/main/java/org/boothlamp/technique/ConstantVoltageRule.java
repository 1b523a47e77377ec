package org.boothlamp.technique;

import static org.boothlamp.technique.DirectionRule.isSeen;

import org.boothlamp.procedure.Quantity;

/**
 * Wire. At a steady feed a longer stick-out needs fewer amps to melt the wire (feed = alpha I +
 * beta l I^2); the volts stay, but for the little that the source's curve gives. The machine sets
 * volts and feed: volts that are off from the start are its setting. Amps alone from the start may
 * be either feed or stick-out, and nothing measured tells which.
 */
final class ConstantVoltageRule implements DirectionRule {

  /**
   * Volts still count as steady if they change by less than this share of what the amps do, both
   * relative: shorts come more seldom, and take less off the mean. Common practice, no source.
   */
  private static final double STEADY_SHARE = 0.25;

  @Override
  public ExplainedSpell byOwnPart(Spell spell, Evidence evidence) {
    double amps = evidence.ampsRatio();
    if (!isSeen(amps)) {
      boolean voltsAlone = isSeen(evidence.voltsRatio());
      return ExplainedSpell.doubtful(
          spell, voltsAlone ? Doubt.NOT_ALONG_THE_CURVE : Doubt.TOO_SMALL, evidence);
    }
    return isSteadyVolts(evidence)
        ? ExplainedSpell.named(spell, stickOut(evidence), evidence, amps)
        : ExplainedSpell.doubtful(spell, Doubt.NOT_ALONG_THE_CURVE, evidence);
  }

  private static boolean isSteadyVolts(Evidence evidence) {
    return !isSeen(evidence.voltsRatio())
        || !isSeen(evidence.voltsOffCurveRatio())
        || Math.abs(evidence.relativeVolts()) <= STEADY_SHARE * Math.abs(evidence.relativeAmps());
  }

  private static Cause stickOut(Evidence evidence) {
    return evidence.deltaAmps() < 0 ? Cause.STICK_OUT_LONGER : Cause.STICK_OUT_SHORTER;
  }

  @Override
  public ExplainedSpell byProcedure(Spell spell, Evidence evidence) {
    double off = evidence.voltsOffCurveRatio();
    boolean opposite = evidence.deltaAmps() * evidence.deltaVolts() < 0;
    if (isSeen(off) && !(opposite && isSeen(evidence.ampsRatio()))) {
      return ExplainedSpell.named(spell, Cause.MACHINE_SETTING, evidence, off);
    }
    boolean ampsOff = spell.quantity() != Quantity.VOLTS && isSeen(evidence.ampsRatio());
    return ExplainedSpell.doubtful(
        spell, ampsOff ? Doubt.STICK_OUT_OR_FEED : Doubt.TOO_SMALL, evidence);
  }
}
