package org.boothlamp.technique;

import org.boothlamp.judging.ChannelUncertainties;
import org.boothlamp.judging.ExpandedUncertainty;
import org.boothlamp.judging.Side;
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

  /**
   * Volts an amp of an arc that keeps its length: half to all of the conventional load's 0.04 V an
   * amp (IEC 60974-1, from memory).
   */
  private static final double ARC_OHMS = 0.03;

  /** So much at least; more must be the hand's. */
  private static final double LEAST_ARC_OHMS = 0.01;

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
    if (byOwnPart == null) {
      return parts.isGeneral(spell)
          ? byProcedure
          : ExplainedSpell.doubtful(spell, Doubt.NOTHING_TO_COMPARE, Evidence.NONE);
    }
    boolean general = parts.isGeneral(spell);
    if (byProcedure.cause() == Cause.MACHINE_SETTING) {
      boolean both = byOwnPart.isNamed() && (isVoltsOfConstantCurrent(spell) || !general);
      return both
          ? ExplainedSpell.doubtful(spell, Doubt.HAND_AND_SETTING, byProcedure.evidence())
          : general ? byProcedure : byOwnPart;
    }
    return byOwnPart.isNamed() || !general ? byOwnPart : byProcedure;
  }

  private boolean isVoltsOfConstantCurrent(Spell spell) {
    return source == Characteristic.CONSTANT_CURRENT && spell.quantity() == Quantity.VOLTS;
  }

  /** Null if there is no steady part. */
  private ExplainedSpell byOwnPart(Spell spell, WorkingPoint there, SourceCurve curve) {
    WorkingPoint steady = WorkingPoint.of(profile, parts.steadyBeside(spell));
    if (steady.points() < RunParts.LEAST_STEADY_POINTS) {
      return null;
    }
    ExplainedSpell found = rule.byOwnPart(spell, againstOwn(there, steady, curve));
    return found.isNamed()
            && (isHelpedBySetting(spell, there, steady) || isVoltsSetOff(spell, steady, curve))
        ? ExplainedSpell.doubtful(spell, Doubt.HAND_AND_SETTING, found.evidence())
        : found;
  }

  /**
   * True if the setting had put the steady part so near to the limit that the same movement of the
   * hand would have stayed inside with the setting right.
   */
  private boolean isHelpedBySetting(Spell spell, WorkingPoint there, WorkingPoint steady) {
    Window window = pass.window(spell.quantity());
    if (window == null) {
      return false;
    }
    double off =
        switch (spell.quantity()) {
          case AMPS -> steady.amps() - middle(window);
          case VOLTS ->
              source == Characteristic.CONSTANT_CURRENT
                  ? voltsByAmps(steady)
                  : steady.volts() - middle(window);
          default -> 0;
        };
    double value = spell.quantity() == Quantity.AMPS ? there.amps() : there.volts();
    boolean seen = Math.abs(off) > MIDDLE_SHARE * window.width();
    return seen && isInside(window, value - off);
  }

  /**
   * True if the steady part of a wire arc shows volts that are set wrong: with them goes the feed,
   * the same way, and the part inside the window may be the one in which the hand made up for it.
   */
  private boolean isVoltsSetOff(Spell spell, WorkingPoint steady, SourceCurve curve) {
    Window amps = pass.window(Quantity.AMPS);
    Window volts = pass.window(Quantity.VOLTS);
    if (source != Characteristic.CONSTANT_VOLTAGE || volts == null) {
      return false;
    }
    double ratio = againstProcedure(steady, amps, volts, curve).voltsOffCurveRatio();
    boolean sameWay = ratio > 0 == (spell.side() == Side.HIGH);
    return sameWay && DirectionRule.isSeen(ratio);
  }

  private static boolean isInside(Window window, double value) {
    return value >= window.low() && value <= window.high();
  }

  /** Volts that an arc takes more because its amps are off the middle of their window. */
  private double voltsByAmps(WorkingPoint point) {
    Window amps = pass.window(Quantity.AMPS);
    return amps == null ? 0 : ARC_OHMS * (point.amps() - middle(amps));
  }

  private ExplainedSpell byProcedure(Spell spell, WorkingPoint there, SourceCurve curve) {
    Window amps = pass.window(Quantity.AMPS);
    Window volts = pass.window(Quantity.VOLTS);
    boolean known = source == Characteristic.CONSTANT_CURRENT ? amps != null : volts != null;
    if (!known) {
      return ExplainedSpell.doubtful(spell, Doubt.NOTHING_TO_COMPARE, Evidence.NONE);
    }
    ExplainedSpell found = rule.byProcedure(spell, againstProcedure(there, amps, volts, curve));
    boolean moreThanTheAmps =
        found.cause() == Cause.MACHINE_SETTING
            && isVoltsOfConstantCurrent(spell)
            && !isInside(volts, there.volts() - LEAST_ARC_OHMS / ARC_OHMS * voltsByAmps(there));
    return moreThanTheAmps
        ? ExplainedSpell.doubtful(spell, Doubt.HAND_AND_SETTING, found.evidence())
        : found;
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
