package org.boothlamp.monitor;

/**
 * Where sample pairs come from.
 *
 * <p>Order of calls: {@link #read} again and again, then {@link #close}, all from the sampler's
 * thread. A source opens its device at the first read, and opens it again by itself when it was
 * lost. Once pairs flow, reading creates no objects.
 */
public interface SampleSource extends AutoCloseable {

  /** What a read brought. */
  enum Outcome {
    /** The block holds at least one pair. */
    PAIRS,
    /** Nothing arrived within the waiting time; the block's time is set. */
    NOTHING,
    /** There will be no more pairs. */
    END
  }

  /** Longest time a read waits, nanoseconds: 50 ms, so that the lamp never waits for a source. */
  long LONGEST_WAIT_NANOS = 50_000_000L;

  /** Fills {@code block} with pairs in order of their index; waits at most 50 ms for them. */
  Outcome read(SampleBlock block);

  /**
   * The format of the pairs of the last read, or null until it is known; never null once a read
   * brought pairs. A new object if it changed.
   */
  SourceFormat format();

  /** What went wrong so far. */
  SourceCounters counters();

  /**
   * Why no pairs come, for people, with the next move; null if that is not known or nothing is
   * wrong. May be asked from any thread.
   */
  default String trouble() {
    return null;
  }

  /** True if {@link #performance} and {@link #rateTrouble} will say something in time. */
  default boolean measuresRate() {
    return false;
  }

  /**
   * How evenly pairs are taken, for people: rate achieved, how late; null if it is not measured or
   * nothing is known yet. May be asked from any thread, also after the end.
   */
  default String performance() {
    return null;
  }

  /**
   * That pairs are lost for good because the rate asked for is not held, for people: rate asked and
   * achieved, and the next move; null while it is held, or not known. May be asked from any thread.
   */
  default String rateTrouble() {
    return null;
  }

  /**
   * What a source of this kind cannot measure, for people; empty if nothing. May be asked from any
   * thread.
   */
  default String limits() {
    return "";
  }

  /** Releases the device; a second call does nothing. */
  @Override
  void close();
}
