package org.boothlamp.judging;

/**
 * Uncertainties of both channels and where they come from. Immutable.
 *
 * @param amps of the current channel
 * @param volts of the voltage channel
 * @param calibrated false while they are a stated default and not the result of a calibration
 */
public record ChannelUncertainties(
    ExpandedUncertainty amps, ExpandedUncertainty volts, boolean calibrated) {

  /**
   * U of a product of both at given readings, to first order and for independent channels (GUM
   * 5.1.2, equation 10).
   */
  public double watts(double ampsReading, double voltsReading) {
    return Math.hypot(amps.at(ampsReading) * voltsReading, volts.at(voltsReading) * ampsReading);
  }
}
