package org.boothlamp.judging;

import org.boothlamp.signal.ChannelReach;
import org.boothlamp.signal.Polarity;

/**
 * Whether a channel can serve one window of averaged amps or volts. Immutable.
 *
 * @param band the window with its caution band
 * @param reach the channel that measures it
 * @param polarity the kind of current that the procedure asks for
 */
public record WindowReach(CautionBand band, ChannelReach reach, Polarity polarity) {

  /**
   * Counts that a caution band should hold at least; common practice for a gauge against its
   * tolerance, no source.
   */
  public static final int LEAST_COUNTS_A_BAND = 10;

  /** Peak over RMS of a sine, the least that an alternating current needs. */
  private static final double SINE_CREST = Math.sqrt(2);

  /** Counts in the caution band, not rounded. */
  public double countsABand() {
    return band.band() / reach.step();
  }

  /** True if a count is larger than a tenth of the caution band. */
  public boolean isCoarse() {
    return countsABand() < LEAST_COUNTS_A_BAND;
  }

  /** The largest momentary value that occurs at the window's high limit, pulses not counted. */
  public double needed() {
    double high = band.window().high();
    return polarity == Polarity.AC ? SINE_CREST * high : high;
  }

  /** True if the channel clips before the window's high limit. */
  public boolean isClipped() {
    return reach.largest(polarity) < needed();
  }
}
