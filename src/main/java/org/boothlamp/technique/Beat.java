package org.boothlamp.technique;

/**
 * How fast and how regular the arc's length went up and down. Immutable.
 *
 * @param periodSeconds time of one movement, s; NaN if there was no beat
 * @param strength likeness of one movement to the next, 0 to 1
 */
public record Beat(double periodSeconds, double strength) {

  /** No whipping or weaving was seen. */
  public static final Beat NONE = new Beat(Double.NaN, 0);

  /** True if there was a beat at all. */
  public boolean isFound() {
    return !Double.isNaN(periodSeconds);
  }
}
