package org.boothlamp.acquisition;

/** Pairs on the wire; one object is filled again for every frame. Confined to one thread. */
public final class SamplesFrame {

  /** Most pairs in a frame. */
  public static final int CAPACITY = 100;

  /** Current counts; the first {@link #count} are valid. */
  public final short[] current = new short[CAPACITY];

  /** Voltage counts; the first {@link #count} are valid. */
  public final short[] voltage = new short[CAPACITY];

  /** Pairs held, 1 to {@link #CAPACITY}. */
  public int count;

  /** Number of the frame since the board started, modulo 256: 0 to 255. */
  public int counter;

  /** Index of the first pair since the board started, modulo 2^32: read it as unsigned. */
  public int firstIndex;
}
