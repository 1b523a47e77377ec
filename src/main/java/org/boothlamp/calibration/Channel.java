package org.boothlamp.calibration;

import org.boothlamp.signal.ChannelScale;
import org.boothlamp.signal.PairScale;

/** Which of the two sensors is calibrated. */
public enum Channel {
  CURRENT("current", "A"),
  VOLTAGE("voltage", "V");

  private final String word;
  private final String unit;

  Channel(String word, String unit) {
    this.word = word;
    this.unit = unit;
  }

  /** As commands and records spell it. */
  public String word() {
    return word;
  }

  /** "A" or "V". */
  public String unit() {
    return unit;
  }

  /** This channel's scale out of a pair. */
  public ChannelScale of(PairScale pair) {
    return this == CURRENT ? pair.current() : pair.voltage();
  }

  /** The pair with this channel's scale replaced. */
  public PairScale replace(PairScale pair, ChannelScale scale) {
    return this == CURRENT
        ? new PairScale(scale, pair.voltage())
        : new PairScale(pair.current(), scale);
  }
}
