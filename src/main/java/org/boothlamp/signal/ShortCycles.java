package org.boothlamp.signal;

/**
 * Sums over the cycles of short-circuit transfer: a short circuit and the arc after it. They tell
 * rate, regularity, share of time shorted, and the current in the short. Whole numbers, so adding
 * loses no digit. Nothing is created after construction. Confined to one thread.
 *
 * <p>A short counts as {@link ShortCircuitRule} says. A cycle goes from the start of one short to
 * the start of the next, and is one only if that is at most {@value #LONGEST_CYCLE_SECONDS} s
 * without a gap. What no cycle tells is NaN.
 */
public final class ShortCycles {

  /** Longer is no transfer but a touch now and then. */
  public static final double LONGEST_CYCLE_SECONDS = 0.5;

  private long shorts;
  private long shortPairs;
  private long shortPairsSquared;
  private long shortCounts;
  private long peakCounts;
  private int highestPeakCounts;

  private long cycles;
  private long cyclePairs;
  private long cyclePairsSquared;
  private long arcPairs;
  private long arcPairsSquared;

  /** Empty sums. */
  public ShortCycles() {
    clear();
  }

  /** Forgets everything. */
  public void clear() {
    shorts = 0;
    shortPairs = 0;
    shortPairsSquared = 0;
    shortCounts = 0;
    peakCounts = 0;
    highestPeakCounts = 0;
    cycles = 0;
    cyclePairs = 0;
    cyclePairsSquared = 0;
    arcPairs = 0;
    arcPairsSquared = 0;
  }

  /** Becomes a copy of {@code other}. */
  public void set(ShortCycles other) {
    clear();
    add(other);
  }

  /** Adds all cycles of {@code other}. */
  public void add(ShortCycles other) {
    shorts += other.shorts;
    shortPairs += other.shortPairs;
    shortPairsSquared += other.shortPairsSquared;
    shortCounts += other.shortCounts;
    peakCounts += other.peakCounts;
    highestPeakCounts = Math.max(highestPeakCounts, other.highestPeakCounts);
    cycles += other.cycles;
    cyclePairs += other.cyclePairs;
    cyclePairsSquared += other.cyclePairsSquared;
    arcPairs += other.arcPairs;
    arcPairsSquared += other.arcPairsSquared;
  }

  /**
   * A short is over.
   *
   * @param pairs its length
   * @param counts sum of its absolute current counts, less the zero
   * @param peak the highest of them
   */
  void addShort(int pairs, long counts, int peak) {
    shorts++;
    shortPairs += pairs;
    shortPairsSquared += (long) pairs * pairs;
    shortCounts += counts;
    peakCounts += peak;
    highestPeakCounts = Math.max(highestPeakCounts, peak);
  }

  /**
   * The next short has begun in time.
   *
   * @param pairs from the start of one to the start of the other
   * @param arc of them with an arc
   */
  void addCycle(long pairs, long arc) {
    cycles++;
    cyclePairs += pairs;
    cyclePairsSquared += pairs * pairs;
    arcPairs += arc;
    arcPairsSquared += arc * arc;
  }

  /** Short circuits. */
  public long shorts() {
    return shorts;
  }

  /** Whole cycles. */
  public long cycles() {
    return cycles;
  }

  /** Mean time of a cycle, s. */
  public double meanCycleSeconds(int pairsPerSecond) {
    return (double) cyclePairs / cycles / pairsPerSecond;
  }

  /** Standard deviation of the time of a cycle, s. */
  public double cycleDeviationSeconds(int pairsPerSecond) {
    return deviation(cycles, cyclePairs, cyclePairsSquared) / pairsPerSecond;
  }

  /** Mean length of a short, s. */
  public double meanShortSeconds(int pairsPerSecond) {
    return (double) shortPairs / shorts / pairsPerSecond;
  }

  /** Share of the cycles' time that was shorted, 0 to 1. */
  public double shortedShare() {
    return (double) (cyclePairs - arcPairs) / cyclePairs;
  }

  /**
   * How irregular the transfer is: standard deviation over mean of the shorts' lengths, plus the
   * same of the arcs between them (Vilarinho's regularity index, from memory). 0 is a clockwork.
   */
  public double irregularity() {
    return relativeDeviation(shorts, shortPairs, shortPairsSquared)
        + relativeDeviation(cycles, arcPairs, arcPairsSquared);
  }

  /** Mean current while shorted, A. */
  public double meanShortAmps(PairScale scale) {
    return amps(scale, (double) shortCounts / shortPairs);
  }

  /** Mean of the shorts' highest currents, A. */
  public double meanPeakAmps(PairScale scale) {
    return amps(scale, (double) peakCounts / shorts);
  }

  /** The highest current in any short, A; NaN without shorts. */
  public double highestPeakAmps(PairScale scale) {
    return shorts == 0 ? Double.NaN : amps(scale, highestPeakCounts);
  }

  private static double amps(PairScale scale, double counts) {
    return Math.abs(scale.current().unitsPerCount()) * counts;
  }

  private static double relativeDeviation(long n, long sum, long sumOfSquares) {
    return deviation(n, sum, sumOfSquares) / ((double) sum / n);
  }

  private static double deviation(long n, long sum, long sumOfSquares) {
    if (n < 2) {
      return Double.NaN;
    }
    double mean = (double) sum / n;
    return Math.sqrt(Math.max(0, sumOfSquares - n * mean * mean) / (n - 1));
  }
}
