package org.boothlamp.technique;

/** What a change of amps and volts means on a machine of one characteristic. Immutable. */
interface DirectionRule {

  /**
   * A spell against the trainee's own steady part: the setting is the same, the hand may differ.
   */
  ExplainedSpell byOwnPart(Spell spell, Evidence evidence);

  /** A spell that is most of the run, against the procedure: the setting may differ too. */
  ExplainedSpell byProcedure(Spell spell, Evidence evidence);

  /** True if a change is at least three times its uncertainty. */
  static boolean isSeen(double ratio) {
    return Math.abs(ratio) >= ExplainedSpell.LEAST_RATIO;
  }
}
