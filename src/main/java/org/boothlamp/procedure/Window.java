package org.boothlamp.procedure;

/**
 * Low and high limit of one averaged quantity, both inside. Immutable.
 *
 * @param quantity what is limited
 * @param low low limit in the quantity's unit, at least 0
 * @param high high limit, above {@code low}
 */
public record Window(Quantity quantity, double low, double high) {

  public Window {
    if (!(low >= 0) || !(high > low) || Double.isInfinite(high)) {
      throw new IllegalArgumentException(
          "window low must be at least 0 and below high: "
              + quantity.key()
              + " low="
              + low
              + ", high="
              + high);
    }
  }

  /** Distance between the limits. */
  public double width() {
    return high - low;
  }
}
