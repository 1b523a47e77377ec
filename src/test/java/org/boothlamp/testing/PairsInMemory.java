package org.boothlamp.testing;

import org.boothlamp.report.RawPairSink;
import org.boothlamp.report.RawRecording;
import org.boothlamp.signal.PairScale;

/** Pairs of a test as a raw recording whose run begins with its first pair. */
public record PairsInMemory(
    int pairsPerSecond, PairScale scale, short[] current, short[] voltage, long missingFrom)
    implements RawRecording {

  /** A known recording; seconds count from its start. */
  public static PairsInMemory of(KnownRecording known) {
    return new PairsInMemory(
        known.pairsPerSecond(), known.scale(), known.current(), known.voltage(), Long.MAX_VALUE);
  }

  @Override
  public double startSeconds() {
    return 0;
  }

  @Override
  public double endSeconds() {
    return (double) current.length / pairsPerSecond;
  }

  @Override
  public void read(long firstPair, long pairs, RawPairSink sink) {
    for (long at = firstPair; at < firstPair + pairs; at++) {
      if (at >= missingFrom) {
        sink.miss();
      } else {
        sink.take(current[(int) at], voltage[(int) at]);
      }
    }
  }
}
