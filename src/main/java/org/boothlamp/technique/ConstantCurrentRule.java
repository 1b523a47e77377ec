package org.boothlamp.technique;

import static org.boothlamp.technique.DirectionRule.isSeen;

import org.boothlamp.procedure.Quantity;

/**
 * Stick and TIG. The arc's length sets the volts; the amps follow the source's curve, down when the
 * volts go up (Modern Steel Construction, May 1997), not at all on a steep source. The machine sets
 * the current: amps that the curve does not explain by the volts are its setting.
 */
final class ConstantCurrentRule implements DirectionRule {

  @Override
  public ExplainedSpell byOwnPart(Spell spell, Evidence evidence) {
    double volts = evidence.voltsRatio();
    if (!isSeen(volts)) {
      boolean ampsAlone = isSeen(evidence.ampsRatio());
      return ExplainedSpell.doubtful(
          spell, ampsAlone ? Doubt.NOT_ALONG_THE_CURVE : Doubt.TOO_SMALL, evidence);
    }
    return isAlongTheCurve(evidence)
        ? ExplainedSpell.named(spell, arc(evidence), evidence, volts)
        : ExplainedSpell.doubtful(spell, Doubt.NOT_ALONG_THE_CURVE, evidence);
  }

  /** On the curve within the uncertainty, or at least not against its direction. */
  private static boolean isAlongTheCurve(Evidence evidence) {
    boolean opposite = evidence.deltaAmps() * evidence.deltaVolts() <= 0;
    return opposite || !isSeen(evidence.ampsRatio()) || !isSeen(evidence.ampsOffCurveRatio());
  }

  private static Cause arc(Evidence evidence) {
    return evidence.deltaVolts() > 0 ? Cause.ARC_LONGER : Cause.ARC_SHORTER;
  }

  @Override
  public ExplainedSpell byProcedure(Spell spell, Evidence evidence) {
    return spell.quantity() == Quantity.VOLTS
        ? voltsByProcedure(spell, evidence)
        : ampsByProcedure(spell, evidence);
  }

  /** Another electrode or gas lifts the volts as well; but only a hand moves along the curve. */
  private static ExplainedSpell voltsByProcedure(Spell spell, Evidence evidence) {
    double volts = evidence.voltsRatio();
    double amps = evidence.ampsRatio();
    if (!isSeen(volts)) {
      return ExplainedSpell.doubtful(spell, Doubt.TOO_SMALL, evidence);
    }
    if (!isSeen(amps)) {
      return ExplainedSpell.doubtful(spell, Doubt.ARC_OR_SET_UP, evidence);
    }
    double weaker = Math.min(Math.abs(volts), Math.abs(amps));
    if (amps * volts > 0) {
      return ExplainedSpell.named(spell, Cause.MACHINE_SETTING, evidence, weaker);
    }
    return isSeen(evidence.ampsOffCurveRatio())
        ? ExplainedSpell.doubtful(spell, Doubt.NOT_ALONG_THE_CURVE, evidence)
        : ExplainedSpell.named(spell, arc(evidence), evidence, weaker);
  }

  private static ExplainedSpell ampsByProcedure(Spell spell, Evidence evidence) {
    double off = evidence.ampsOffCurveRatio();
    if (isSeen(off)) {
      boolean sameWay = off * evidence.deltaAmps() > 0;
      return sameWay
          ? ExplainedSpell.named(spell, Cause.MACHINE_SETTING, evidence, off)
          : ExplainedSpell.doubtful(spell, Doubt.NOT_ALONG_THE_CURVE, evidence);
    }
    boolean opposite = evidence.deltaAmps() * evidence.deltaVolts() < 0;
    double weaker = Math.min(Math.abs(evidence.ampsRatio()), Math.abs(evidence.voltsRatio()));
    return opposite && isSeen(weaker)
        ? ExplainedSpell.named(spell, arc(evidence), evidence, weaker)
        : ExplainedSpell.doubtful(spell, Doubt.TOO_SMALL, evidence);
  }
}
