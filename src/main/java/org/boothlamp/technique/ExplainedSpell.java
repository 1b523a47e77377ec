package org.boothlamp.technique;

import org.apache.commons.math3.special.Erf;

/**
 * A spell with its one cause. Immutable.
 *
 * @param spell the spell
 * @param cause what put it outside
 * @param doubt why no cause is named; {@link Doubt#NONE} if one is
 * @param evidence what the cause rests on
 * @param confidence coverage of the weakest step of the reasoning, 0 to 1; 0 if no cause is named
 * @param lengthChangeMm change of arc length or stick-out against the reference; unknown where
 *     physics does not allow it
 */
public record ExplainedSpell(
    Spell spell,
    Cause cause,
    Doubt doubt,
    Evidence evidence,
    double confidence,
    Estimate lengthChangeMm) {

  /** No cause is named below three times the uncertainty: 99.7 % for normal errors. */
  public static final double LEAST_RATIO = 3;

  static ExplainedSpell named(Spell spell, Cause cause, Evidence evidence, double ratio) {
    return new ExplainedSpell(
        spell, cause, Doubt.NONE, evidence, coverage(ratio), Estimate.UNKNOWN);
  }

  /** A cause that does not rest on the size of a change. */
  static ExplainedSpell certain(Spell spell, Cause cause) {
    return new ExplainedSpell(spell, cause, Doubt.NONE, Evidence.NONE, 1, Estimate.UNKNOWN);
  }

  static ExplainedSpell doubtful(Spell spell, Doubt doubt, Evidence evidence) {
    return new ExplainedSpell(spell, Cause.CANNOT_TELL, doubt, evidence, 0, Estimate.UNKNOWN);
  }

  private static double coverage(double ratio) {
    return Erf.erf(Math.abs(ratio) / Math.sqrt(2));
  }

  ExplainedSpell withLengthChange(Estimate mm) {
    return new ExplainedSpell(spell, cause, doubt, evidence, confidence, mm);
  }

  boolean isNamed() {
    return cause != Cause.CANNOT_TELL;
  }
}
