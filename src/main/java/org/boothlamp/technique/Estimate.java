package org.boothlamp.technique;

/**
 * A computed value. Immutable.
 *
 * @param value in the unit that the place says; NaN if it cannot be computed
 * @param uncertainty standard uncertainty (k = 1) in the same unit; NaN likewise
 */
public record Estimate(double value, double uncertainty) {

  /** Nothing can be said. */
  public static final Estimate UNKNOWN = new Estimate(Double.NaN, Double.NaN);

  /** True if there is a value. */
  public boolean isKnown() {
    return !Double.isNaN(value);
  }
}
