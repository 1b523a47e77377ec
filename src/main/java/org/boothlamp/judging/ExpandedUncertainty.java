package org.boothlamp.judging;

/**
 * Expanded uncertainty (k = 2) of a channel: {@code constant + proportional * |reading|}.
 * Immutable.
 *
 * @param constant in the channel's unit, at least 0
 * @param proportional fraction of the reading, at least 0
 */
public record ExpandedUncertainty(double constant, double proportional) {

  public ExpandedUncertainty {
    if (!(constant >= 0) || !(proportional >= 0)) {
      throw new IllegalArgumentException(
          "uncertainty must be at least 0: constant="
              + constant
              + ", proportional="
              + proportional);
    }
  }

  /** U at a reading, in the channel's unit. */
  public double at(double reading) {
    return constant + proportional * Math.abs(reading);
  }
}
