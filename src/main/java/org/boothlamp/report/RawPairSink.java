package org.boothlamp.report;

/** Takes the pairs of a raw recording in order, each one exactly once. */
public interface RawPairSink {

  /** A pair, in counts. */
  void take(short current, short voltage);

  /** A pair that never arrived. */
  void miss();
}
