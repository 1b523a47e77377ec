package org.boothlamp.signal;

/**
 * What a channel can tell apart and how far it goes. The outermost counts are taken for clipped, so
 * the reach ends one count before them. Immutable.
 *
 * @param scale counts to amps or volts
 * @param lowestCount lowest count the converter can give
 * @param highestCount highest count, at least 3 above the lowest
 */
public record ChannelReach(ChannelScale scale, int lowestCount, int highestCount) {

  private static final int LEAST_SPAN_COUNTS = 3;

  public ChannelReach {
    if (highestCount - lowestCount < LEAST_SPAN_COUNTS) {
      throw new IllegalArgumentException(
          "highest count must be at least "
              + LEAST_SPAN_COUNTS
              + " above the lowest: lowest="
              + lowestCount
              + ", highest="
              + highestCount);
    }
  }

  /** Amps or volts between two neighbouring counts, above 0. */
  public double step() {
    return Math.abs(scale.unitsPerCount());
  }

  /** The most negative amps or volts that are not clipped. */
  public double lowest() {
    return Math.min(scale.toUnits(lowestCount + 1), scale.toUnits(highestCount - 1));
  }

  /** The most positive amps or volts that are not clipped. */
  public double highest() {
    return Math.max(scale.toUnits(lowestCount + 1), scale.toUnits(highestCount - 1));
  }

  /** The largest amps or volts that are not clipped with either sign; at least 0. */
  public double bothWays() {
    return Math.max(0, Math.min(-lowest(), highest()));
  }

  /** The largest amps or volts that are not clipped with this kind of current; at least 0. */
  public double largest(Polarity polarity) {
    return switch (polarity) {
      case DC_PLUS -> Math.max(0, highest());
      case DC_MINUS -> Math.max(0, -lowest());
      case AC -> bothWays();
    };
  }
}
