package org.boothlamp.acquisition;

/**
 * Pairs of a recording that are no measurements: nothing arrived in their time. Immutable.
 *
 * @param firstPair place of the first in the recording, from 0
 * @param pairs how many, at least 1
 */
public record PairGap(long firstPair, long pairs) {

  /** Place of the first pair after it. */
  long end() {
    return firstPair + pairs;
  }
}
