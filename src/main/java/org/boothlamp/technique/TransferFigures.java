package org.boothlamp.technique;

import org.boothlamp.signal.PairScale;
import org.boothlamp.signal.ShortCycles;

/**
 * Short-circuit transfer of one run. NaN where too few shorts tell nothing. Immutable.
 *
 * @param shortsPerSecond over the arc-on time
 * @param meanCycleSeconds start of a short to start of the next
 * @param cycleDeviationSeconds standard deviation of that
 * @param meanShortSeconds length of a short
 * @param shortedShare share of the time that was shorted, 0 to 1
 * @param irregularity relative spread of shorts plus that of arcs; 0 is a clockwork
 * @param meanShortAmps mean current while shorted
 * @param meanPeakAmps mean of the shorts' highest currents
 */
public record TransferFigures(
    double shortsPerSecond,
    double meanCycleSeconds,
    double cycleDeviationSeconds,
    double meanShortSeconds,
    double shortedShare,
    double irregularity,
    double meanShortAmps,
    double meanPeakAmps) {

  /** Fewest shorts a second of short-circuit transfer: 20 to over 200 (welding textbook). */
  public static final double LEAST_SHORTS_PER_SECOND = 20;

  /** Fewer are no transfer by shorts at all; common practice, no source. */
  public static final double NO_SHORTS_PER_SECOND = 2;

  /**
   * A sound transfer is shorted for a fifth to a third of the time; common practice, no source.
   * Above this the wire melts too slowly for its feed.
   */
  public static final double COLD_SHORTED_SHARE = 0.45;

  /**
   * A droplet goes over in some milliseconds; a wire that stubs stays; common practice, no source.
   */
  public static final double COLD_SHORT_SECONDS = 0.010;

  /** Arcs and shorts together, each as uneven as its mean is long; our own choice, no source. */
  public static final double UNEVEN_IRREGULARITY = 1.5;

  /** The figures of a run whose source is fast enough to see short circuits. */
  public static TransferFigures of(
      ShortCycles cycles, PairScale scale, int pairsPerSecond, double arcSeconds) {
    return new TransferFigures(
        cycles.shorts() / arcSeconds,
        cycles.meanCycleSeconds(pairsPerSecond),
        cycles.cycleDeviationSeconds(pairsPerSecond),
        cycles.meanShortSeconds(pairsPerSecond),
        cycles.shortedShare(),
        cycles.irregularity(),
        cycles.meanShortAmps(scale),
        cycles.meanPeakAmps(scale));
  }

  /** All that can be said where only the number of shorts is known. */
  public static TransferFigures ofCount(long shorts, double arcSeconds) {
    double nan = Double.NaN;
    return new TransferFigures(shorts / arcSeconds, nan, nan, nan, nan, nan, nan, nan);
  }

  /**
   * What they say of a wire arc.
   *
   * @param meanAmps mean current of the run; NaN if not known
   * @param wireMm diameter of the wire; NaN if not known
   */
  public TransferState state(double meanAmps, double wireMm) {
    if (shortsPerSecond < NO_SHORTS_PER_SECOND) {
      boolean spray = meanAmps >= SprayCurrent.leastAmps(wireMm);
      return spray ? TransferState.SPRAY : TransferState.NO_SHORTS;
    }
    if (shortedShare > COLD_SHORTED_SHARE || meanShortSeconds > COLD_SHORT_SECONDS) {
      return TransferState.TOO_COLD;
    }
    if (shortsPerSecond < LEAST_SHORTS_PER_SECOND) {
      return TransferState.TOO_HOT;
    }
    return irregularity > UNEVEN_IRREGULARITY ? TransferState.UNEVEN : TransferState.STEADY;
  }
}
