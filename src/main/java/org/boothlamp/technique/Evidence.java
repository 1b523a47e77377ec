package org.boothlamp.technique;

/**
 * What a cause rests on. Standard uncertainties, k = 1; NaN where not known. Immutable.
 *
 * @param reference what the spell is compared with
 * @param spellAmps mean current of the spell, A
 * @param spellVolts mean voltage of the spell, V
 * @param deltaAmps amps of the spell less those of the reference
 * @param deltaVolts volts of the spell less those of the reference
 * @param deltaAmpsUncertainty of {@code deltaAmps}
 * @param deltaVoltsUncertainty of {@code deltaVolts}
 * @param sourceSlope slope of the source's curve: A/V on constant current, V/A on constant voltage
 * @param sourceSlopeUncertainty of {@code sourceSlope}, in its unit
 */
public record Evidence(
    Reference reference,
    double spellAmps,
    double spellVolts,
    double deltaAmps,
    double deltaVolts,
    double deltaAmpsUncertainty,
    double deltaVoltsUncertainty,
    double sourceSlope,
    double sourceSlopeUncertainty) {

  static final Evidence NONE =
      new Evidence(
          Reference.NONE,
          Double.NaN,
          Double.NaN,
          Double.NaN,
          Double.NaN,
          Double.NaN,
          Double.NaN,
          Double.NaN,
          Double.NaN);

  /** Change of amps as a share of the reference. */
  double relativeAmps() {
    return deltaAmps / (spellAmps - deltaAmps);
  }

  /** Change of volts as a share of the reference. */
  double relativeVolts() {
    return deltaVolts / (spellVolts - deltaVolts);
  }

  /** Change of amps in its own uncertainty. */
  double ampsRatio() {
    return deltaAmps / deltaAmpsUncertainty;
  }

  /** Change of volts in its own uncertainty. */
  double voltsRatio() {
    return deltaVolts / deltaVoltsUncertainty;
  }

  /** Amps that the source's curve does not explain by the volts, in their uncertainty. */
  double ampsOffCurveRatio() {
    double off = deltaAmps - sourceSlope * deltaVolts;
    return off
        / rootOfSquares(
            deltaAmpsUncertainty,
            sourceSlope * deltaVoltsUncertainty,
            sourceSlopeUncertainty * deltaVolts);
  }

  /** Volts that the source's curve does not explain by the amps, in their uncertainty. */
  double voltsOffCurveRatio() {
    double off = deltaVolts - sourceSlope * deltaAmps;
    return off
        / rootOfSquares(
            deltaVoltsUncertainty,
            sourceSlope * deltaAmpsUncertainty,
            sourceSlopeUncertainty * deltaAmps);
  }

  private static double rootOfSquares(double a, double b, double c) {
    return Math.sqrt(a * a + b * b + c * c);
  }
}
