package org.boothlamp.report;

import org.boothlamp.signal.PairScale;

/**
 * A run at full rate, wherever it lies. Seconds count from the start of the run; a recording begins
 * a little before it. Every reading may throw what the place it lies in throws. Safe to share.
 */
public interface RawRecording {

  /** Rate. */
  int pairsPerSecond();

  /** What its counts mean. */
  PairScale scale();

  /** Seconds of its first pair, 0 or less. */
  double startSeconds();

  /** Seconds after its last pair. */
  double endSeconds();

  /**
   * Hands over the pairs {@code firstPair} to {@code firstPair + pairs - 1}, counted from the
   * recording's first.
   *
   * @throws IndexOutOfBoundsException if it holds fewer
   */
  void read(long firstPair, long pairs, RawPairSink sink);
}
