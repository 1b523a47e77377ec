package org.boothlamp.signal;

/**
 * The straight line from counts to amps or volts: {@code value = unitsPerCount * (count -
 * zeroCount)}.
 *
 * <p>A negative {@code unitsPerCount} turns the channel round, as for a clamp that sits the wrong
 * way on its lead. Immutable.
 *
 * @param unitsPerCount amps or volts per count; finite, not zero
 * @param zeroCount the count, not necessarily whole, that stands for 0 A or 0 V; finite
 */
public record ChannelScale(double unitsPerCount, double zeroCount) {

  public ChannelScale {
    if (!Double.isFinite(unitsPerCount) || unitsPerCount == 0) {
      throw new IllegalArgumentException(
          "units per count must be finite and not 0: unitsPerCount=" + unitsPerCount);
    }
    if (!Double.isFinite(zeroCount)) {
      throw new IllegalArgumentException("zero count must be finite: zeroCount=" + zeroCount);
    }
  }

  /** Amps or volts of one count, or of a mean of counts. */
  public double toUnits(double count) {
    return unitsPerCount * (count - zeroCount);
  }

  /** The count, not rounded, at which this channel reads {@code units}. */
  public double toCount(double units) {
    return units / unitsPerCount + zeroCount;
  }
}
