package org.boothlamp.monitor;

/**
 * What a source says of its pairs. Immutable.
 *
 * @param pairsPerSecond rate, at least 200
 * @param lowestCount lowest count its converter can give: a pair at it is clipped
 * @param highestCount highest count, likewise
 * @param device what delivers the pairs, for people: board id, file name
 */
public record SourceFormat(int pairsPerSecond, int lowestCount, int highestCount, String device) {

  /** Slowest rate that still gives every slot two pairs. */
  public static final int LEAST_PAIRS_PER_SECOND = 200;

  public SourceFormat {
    if (pairsPerSecond < LEAST_PAIRS_PER_SECOND) {
      throw new IllegalArgumentException(
          "a source must give at least "
              + LEAST_PAIRS_PER_SECOND
              + " pairs a second: pairsPerSecond="
              + pairsPerSecond);
    }
    if (lowestCount >= highestCount) {
      throw new IllegalArgumentException(
          "lowest count must be below highest: lowest="
              + lowestCount
              + ", highest="
              + highestCount);
    }
  }
}
