package org.boothlamp.acquisition;

/**
 * The truth about one stretch of current, taken in the fine steps of the simulation before noise
 * and counts. It begins when the current reaches 15 A and ends when it falls below 9 A for longer
 * than 0.3 s. Immutable.
 *
 * @param runIndex the run it belongs to
 * @param startSeconds first moment with current, since the source's first pair
 * @param endSeconds last moment with current
 * @param arcSeconds time with arc volts, that is above 8 V, and current
 * @param meanAmps mean of the absolute current while it flows, arc-outs left out
 * @param meanVolts mean of the absolute voltage over the same time
 * @param rmsAmps RMS current over the same time
 * @param rmsVolts RMS voltage over the same time
 * @param energyJoules time integral of v·i over the same time
 * @param flowingSeconds that time: from start to end without the arc-outs
 * @param shortCircuits voltage below 8 V for at least 0.5 ms with current flowing
 * @param arcOuts interruptions of more than 5 ms and at most 0.3 s
 * @param travelMm way travelled along the joint meanwhile
 */
public record SimulatedBurn(
    int runIndex,
    double startSeconds,
    double endSeconds,
    double arcSeconds,
    double meanAmps,
    double meanVolts,
    double rmsAmps,
    double rmsVolts,
    double energyJoules,
    double flowingSeconds,
    int shortCircuits,
    int arcOuts,
    double travelMm) {

  /** Shorter than this it is a touch. */
  public static final double SHORTEST_SEGMENT_SECONDS = 0.3;

  private static final double LEAST_ARC_SHARE = 0.1;

  /** Length from start to end, arc-outs inside, s. */
  public double lengthSeconds() {
    return endSeconds - startSeconds;
  }

  /** Mean of the products v·i, W. */
  public double meanWatts() {
    return energyJoules / flowingSeconds;
  }

  /** True for a contact that did not become a weld: too short, or hardly ever at arc volts. */
  public boolean isTouch() {
    return lengthSeconds() < SHORTEST_SEGMENT_SECONDS
        || arcSeconds < LEAST_ARC_SHARE * lengthSeconds();
  }
}
