package org.boothlamp.report;

import org.boothlamp.signal.ChannelScale;

/**
 * From a reading by one scale to the reading by another of the same counts: {@code gain * reading +
 * offset}, signed. Immutable.
 *
 * @param gain one scale's units per count over the other's
 * @param offset in amps or volts
 */
record Rescale(double gain, double offset) {

  static final Rescale NONE = new Rescale(1, 0);

  static Rescale of(ChannelScale from, ChannelScale to) {
    double gain = to.unitsPerCount() / from.unitsPerCount();
    return new Rescale(gain, to.unitsPerCount() * (from.zeroCount() - to.zeroCount()));
  }

  /** For readings whose zero is right already. */
  Rescale aboutZero() {
    return new Rescale(gain, 0);
  }

  /** A reading, or a mean of readings. */
  double value(double reading) {
    return gain * reading + offset;
  }

  /**
   * Root of the mean square, out of the one before and the signed mean: the mean of (g x + o)² is
   * g² times the mean of x² plus 2 g o times the mean of x plus o².
   */
  double rms(double rms, double mean) {
    double square = gain * gain * rms * rms + 2 * gain * offset * mean + offset * offset;
    return Math.sqrt(Math.max(0, square));
  }

  /**
   * Mean of the products with another channel.
   *
   * @param product the one before
   * @param otherMean signed mean of the other channel, which stays as it is
   */
  double product(double product, double otherMean) {
    return gain * product + offset * otherMean;
  }
}
