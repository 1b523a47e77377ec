package org.boothlamp.monitor;

/**
 * Sample pairs that follow each other without a gap, as a source delivers them. One object is
 * filled again for every read. Confined to one thread.
 */
public final class SampleBlock {

  /** Pairs a block can hold: 0.1 s at 10,000 pairs a second. */
  public static final int CAPACITY = 1_000;

  /** Current counts; the first {@link #count} are valid. */
  public final short[] current = new short[CAPACITY];

  /** Voltage counts; the first {@link #count} are valid. */
  public final short[] voltage = new short[CAPACITY];

  /** Pairs held, 0 to {@link #CAPACITY}. */
  public int count;

  /**
   * Index of the first pair since the source's first pair; lost pairs are counted too, so a jump is
   * missing time.
   */
  public long firstIndex;

  /**
   * Monotonic time when the read returned, nanoseconds; set on every read, with pairs or without. A
   * source that does not run in real time counts it from its pairs instead.
   */
  public long monotonicNanos;
}
