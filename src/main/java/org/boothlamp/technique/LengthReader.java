package org.boothlamp.technique;

import org.boothlamp.judging.ChannelUncertainties;
import org.boothlamp.procedure.Characteristic;
import org.boothlamp.procedure.Pass;
import org.boothlamp.procedure.Procedure;
import org.boothlamp.procedure.Process;

/**
 * Millimetres, where physics allows: stick-out of a known wire at a known feed, arc length where
 * the school has measured two. Immutable.
 */
final class LengthReader {

  private final boolean wire;
  private final double feedMmPerS;
  private final BurnOff burnOff;
  private final ArcLengthScale arcLength;
  private final ChannelUncertainties uncertainties;

  LengthReader(
      Procedure procedure, Pass pass, ChannelUncertainties uncertainties, SchoolScales scales) {
    this.uncertainties = uncertainties;
    wire = procedure.source() == Characteristic.CONSTANT_VOLTAGE;
    feedMmPerS = pass.wireFeedMmPerS();
    arcLength = scales.arcLength();
    Process process = procedure.process();
    boolean solid = process == Process.MAG || process == Process.MIG;
    BurnOff table = solid ? BurnOff.ofSolidSteel(pass.wireMm()) : null;
    burnOff = scales.burnOff() == null ? table : scales.burnOff();
  }

  private boolean tellsStickOut() {
    return wire && burnOff != null && !Double.isNaN(feedMmPerS);
  }

  /** Stick-out over the whole run, mm. */
  Estimate stickOutMm(RunFacts facts) {
    return tellsStickOut() && !Double.isNaN(facts.meanAmps())
        ? stickOut(burnOff, facts.meanAmps(), facts.formFactor(), sensor(facts.meanAmps()))
        : Estimate.UNKNOWN;
  }

  private double sensor(double amps) {
    return uncertainties.amps().at(amps) / 2;
  }

  private Estimate stickOut(BurnOff by, double amps, double formFactor, double ampsUncertainty) {
    return by.stickOutMm(feedMmPerS, amps, formFactor * amps, ampsUncertainty);
  }

  /** Change of stick-out or arc length of a spell against its reference, mm. */
  Estimate changeMm(ExplainedSpell spell, RunFacts facts) {
    if (!spell.cause().isHand()) {
      return Estimate.UNKNOWN;
    }
    Evidence evidence = spell.evidence();
    if (!wire) {
      return arcLength == null
          ? Estimate.UNKNOWN
          : arcLength.changeMm(evidence.deltaVolts(), evidence.deltaVoltsUncertainty());
    }
    return tellsStickOut() ? stickOutChange(evidence, facts.formFactor()) : Estimate.UNKNOWN;
  }

  /** Errors of the coefficients are the same on both sides, and so move the difference little. */
  private Estimate stickOutChange(Evidence evidence, double formFactor) {
    double change = change(burnOff, evidence, formFactor, 0);
    double ofAmps = change(burnOff, evidence, formFactor, evidence.deltaAmpsUncertainty()) - change;
    double ofAlpha = change(moved(1, 0), evidence, formFactor, 0) - change;
    double ofBeta = change(moved(0, 1), evidence, formFactor, 0) - change;
    return new Estimate(change, Math.hypot(ofAmps, Math.hypot(ofAlpha, ofBeta)));
  }

  private double change(BurnOff by, Evidence evidence, double formFactor, double shiftAmps) {
    double reference = evidence.spellAmps() - evidence.deltaAmps();
    return stickOut(by, evidence.spellAmps() + shiftAmps, formFactor, 0).value()
        - stickOut(by, reference, formFactor, 0).value();
  }

  private BurnOff moved(double alphas, double betas) {
    return new BurnOff(
        burnOff.name(),
        burnOff.wireMm(),
        burnOff.alphaMmPerAs() + alphas * burnOff.alphaUncertainty(),
        burnOff.betaPerA2s() + betas * burnOff.betaUncertainty(),
        0,
        0,
        burnOff.lowAmps(),
        burnOff.highAmps(),
        burnOff.origin());
  }
}
