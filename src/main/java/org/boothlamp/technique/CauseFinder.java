package org.boothlamp.technique;

import org.boothlamp.judging.ChannelUncertainties;
import org.boothlamp.judging.ExpandedUncertainty;
import org.boothlamp.procedure.Characteristic;
import org.boothlamp.procedure.Pass;
import org.boothlamp.procedure.Procedure;
import org.boothlamp.procedure.Quantity;
import org.boothlamp.procedure.Window;

/**
 * Gives each spell of a run its one cause.
 *
 * <pre>
 *  spell -- slope or crater fill? -- whip? -- out from the first second, or for most of the run?
 *              yes: against the procedure: the machine? --+
 *              no, or not the machine                     v
 *              +--------------------------------------> against the own steady part: the hand?
 * </pre>
 *
 * <p>In the own steady part the machine's setting is the same, and so is the error of the sensors:
 * it shows the hand best. But where the machine is set wrong the part inside the window may be the
 * one in which the hand made up for it, so that the machine is asked first. Confined to one thread.
 */
final class CauseFinder {

  /** Where the right setting lies in its window, as a standard uncertainty: the caution band. */
  private static final double MIDDLE_SHARE = 0.1;

  /** Volts if a pass does not limit them: 20 to 30 V, rectangular (US Army course OD1651). */
  private static final double UNLIMITED_VOLTS_UNCERTAINTY = 10 / Math.sqrt(12);

  private final RunProfile profile;
  private final RunParts parts;
  private final Characteristic source;
  private final Pass pass;
  private final ChannelUncertainties uncertainties;
  private final PeriodicMovement movement;
  private final DirectionRule rule;

  CauseFinder(
      RunProfile profile,
      RunParts parts,
      Procedure procedure,
      Pass pass,
      ChannelUncertainties uncertainties,
      PeriodicMovement movement) {
    this.profile = profile;
    this.pass = pass;
    this.uncertainties = uncertainties;
    this.movement = movement;
    source = procedure.source();
    this.parts = parts;
    rule =
        source == Characteristic.CONSTANT_CURRENT
            ? new ConstantCurrentRule()
            : new ConstantVoltageRule();
  }

  ExplainedSpell explain(Spell spell) {
    if (profile.isAlternating()) {
      return ExplainedSpell.doubtful(spell, Doubt.ALTERNATING, Evidence.NONE);
    }
    if (parts.isSlope(spell)) {
      return ExplainedSpell.certain(spell, Cause.SLOPE);
    }
    if (pass.whip() && movement.explains(spell)) {
      return ExplainedSpell.certain(spell, Cause.WHIP);
    }
    return compare(spell);
  }

  private ExplainedSpell compare(Spell spell) {
    WorkingPoint there = WorkingPoint.of(profile, parts.of(spell));
    if (!there.isKnown()) {
      return ExplainedSpell.doubtful(spell, Doubt.NOTHING_TO_COMPARE, Evidence.NONE);
    }
    SourceCurve curve = SourceCurve.of(profile, parts.levelWithout(spell), source);
    ExplainedSpell byProcedure = byProcedure(spell, there, curve);
    ExplainedSpell byOwnPart = byOwnPart(spell, there, curve);
    if (byProcedure.cause() == Cause.MACHINE_SETTING || byOwnPart == null) {
      return byProcedure;
    }
    return byOwnPart.isNamed() || !parts.isGeneral(spell) ? byOwnPart : byProcedure;
  }

  /** Null if there is no steady part. */
  private ExplainedSpell byOwnPart(Spell spell, WorkingPoint there, SourceCurve curve) {
    WorkingPoint steady = WorkingPoint.of(profile, parts.steadyBeside(spell));
    if (steady.points() < RunParts.LEAST_STEADY_POINTS) {
      return null;
    }
    ExplainedSpell found = rule.byOwnPart(spell, againstOwn(there, steady, curve));
    return found.isNamed() && isHelpedBySetting(spell, there, steady)
        ? ExplainedSpell.doubtful(spell, Doubt.HAND_AND_SETTING, found.evidence())
        : found;
  }

  /**
   * True if the setting had put the steady part so near to the limit that the same movement of the
   * hand would have stayed inside with the setting right.
   */
  private boolean isHelpedBySetting(Spell spell, WorkingPoint there, WorkingPoint steady) {
    Window window = pass.window(spell.quantity());
    boolean byHandAlone =
        source == Characteristic.CONSTANT_CURRENT && spell.quantity() == Quantity.VOLTS;
    if (window == null || byHandAlone) {
      return false;
    }
    boolean amps = spell.quantity() == Quantity.AMPS;
    if (!amps && spell.quantity() != Quantity.VOLTS) {
      return false;
    }
    double off = (amps ? steady.amps() : steady.volts()) - middle(window);
    double corrected = (amps ? there.amps() : there.volts()) - off;
    boolean inside = corrected >= window.low() && corrected <= window.high();
    return inside && Math.abs(off) > MIDDLE_SHARE * window.width();
  }

  private ExplainedSpell byProcedure(Spell spell, WorkingPoint there, SourceCurve curve) {
    Window amps = pass.window(Quantity.AMPS);
    Window volts = pass.window(Quantity.VOLTS);
    boolean known = source == Characteristic.CONSTANT_CURRENT ? amps != null : volts != null;
    return parts.isGeneral(spell) && known
        ? rule.byProcedure(spell, againstProcedure(there, amps, volts, curve))
        : ExplainedSpell.doubtful(spell, Doubt.NOTHING_TO_COMPARE, Evidence.NONE);
  }

  /** The same sensor in the same minute: only its gain matters, and only for the change. */
  private Evidence againstOwn(WorkingPoint spell, WorkingPoint steady, SourceCurve curve) {
    WorkingPoint there = spell.withScatterOf(steady);
    double amps = there.amps() - steady.amps();
    double volts = there.volts() - steady.volts();
    return new Evidence(
        Reference.OWN_STEADY_PART,
        there.amps(),
        there.volts(),
        amps,
        volts,
        Math.hypot(
            Math.hypot(there.ampsUncertainty(), steady.ampsUncertainty()),
            uncertainties.amps().proportional() / 2 * amps),
        Math.hypot(
            Math.hypot(there.voltsUncertainty(), steady.voltsUncertainty()),
            uncertainties.volts().proportional() / 2 * volts),
        curve.slope(),
        curve.uncertainty());
  }

  private Evidence againstProcedure(
      WorkingPoint there, Window amps, Window volts, SourceCurve curve) {
    return new Evidence(
        Reference.PROCEDURE,
        there.amps(),
        there.volts(),
        amps == null ? 0 : there.amps() - middle(amps),
        volts == null ? 0 : there.volts() - middle(volts),
        uncertainty(there.amps(), there.ampsUncertainty(), uncertainties.amps(), amps, 0),
        uncertainty(
            there.volts(),
            there.voltsUncertainty(),
            uncertainties.volts(),
            volts,
            UNLIMITED_VOLTS_UNCERTAINTY),
        curve.slope(),
        curve.uncertainty());
  }

  private static double middle(Window window) {
    return (window.low() + window.high()) / 2;
  }

  private static double uncertainty(
      double reading,
      double scatter,
      ExpandedUncertainty sensor,
      Window window,
      double withoutWindow) {
    double ofMiddle = window == null ? withoutWindow : MIDDLE_SHARE * window.width();
    return Math.hypot(Math.hypot(scatter, sensor.at(reading) / 2), ofMiddle);
  }
}
