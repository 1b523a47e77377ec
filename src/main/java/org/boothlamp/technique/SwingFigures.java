package org.boothlamp.technique;

import org.boothlamp.signal.PairScale;
import org.boothlamp.signal.Swings;

/**
 * A pulsed or alternating current. Immutable.
 *
 * @param hertz pulses or periods a second
 * @param upperShare share of the time in the upper half, 0 to 1: at the peak, or with the electrode
 *     positive
 * @param upperAmps mean of the upper half, signed, electrode against work
 * @param lowerAmps mean of the lower half, signed: the base, or electrode negative
 */
public record SwingFigures(double hertz, double upperShare, double upperAmps, double lowerAmps) {

  /** Fewer swings than this are chance. */
  private static final int LEAST_SWINGS = 20;

  /** The figures of a run, or null if its current did not swing, or the source was too slow. */
  public static SwingFigures of(Swings swings, PairScale scale, int pairsPerSecond) {
    return swings.swings() < LEAST_SWINGS
        ? null
        : new SwingFigures(
            swings.hertz(pairsPerSecond),
            swings.upperShare(),
            swings.upperAmps(scale),
            swings.lowerAmps(scale));
  }

  /** True if the current changed its direction. */
  public boolean isAlternating() {
    return upperAmps > 0 && lowerAmps < 0;
  }

  /** Share of the time with the electrode negative, 0 to 1: the balance of alternating current. */
  public double electrodeNegativeShare() {
    return 1 - upperShare;
  }

  /** The larger current of a pulse, A, absolute. */
  public double peakAmps() {
    return Math.max(Math.abs(upperAmps), Math.abs(lowerAmps));
  }

  /** Share of the time at the larger current of a pulse, 0 to 1. */
  public double peakShare() {
    return Math.abs(upperAmps) >= Math.abs(lowerAmps) ? upperShare : 1 - upperShare;
  }

  /** The smaller current of a pulse, A, absolute. */
  public double baseAmps() {
    return Math.min(Math.abs(upperAmps), Math.abs(lowerAmps));
  }
}
