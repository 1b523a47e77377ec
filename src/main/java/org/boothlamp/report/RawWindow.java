package org.boothlamp.report;

/**
 * A stretch of a raw recording in whole pairs, cut to what the recording holds. Immutable.
 *
 * @param recording where it is from
 * @param firstPair first pair, counted from the recording's first
 * @param pairs how many, at least 1
 */
public record RawWindow(RawRecording recording, long firstPair, long pairs) {

  /**
   * The pairs between two moments.
   *
   * @param fromSeconds seconds since the run's start
   * @param untilSeconds likewise, outside
   * @return null if the recording holds none of them
   */
  public static RawWindow of(RawRecording recording, double fromSeconds, double untilSeconds) {
    long first = Math.max(0, pairAt(recording, fromSeconds));
    long end = Math.min(pairAt(recording, recording.endSeconds()), pairAt(recording, untilSeconds));
    return end <= first ? null : new RawWindow(recording, first, end - first);
  }

  private static long pairAt(RawRecording recording, double seconds) {
    return Math.round((seconds - recording.startSeconds()) * recording.pairsPerSecond());
  }

  /** Seconds of the first pair, since the run's start. */
  public double fromSeconds() {
    return secondsOf(firstPair);
  }

  /** Seconds after the last pair. */
  public double untilSeconds() {
    return secondsOf(firstPair + pairs);
  }

  private double secondsOf(long pair) {
    return recording.startSeconds() + (double) pair / recording.pairsPerSecond();
  }

  void read(RawPairSink sink) {
    recording.read(firstPair, pairs, sink);
  }
}
