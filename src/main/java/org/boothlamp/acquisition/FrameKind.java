package org.boothlamp.acquisition;

/** What a byte completed in a {@link FrameDecoder}. */
public enum FrameKind {
  /** Nothing yet. */
  NONE,
  /** A frame whose CRC, length or type is wrong: counted and thrown away. */
  BAD,
  /** Sample pairs: {@link FrameDecoder#samples}. */
  SAMPLES,
  /** What the board says of itself: {@link FrameDecoder#hello}. */
  HELLO,
  /** A lamp signal: {@link FrameDecoder#lamp}. */
  LAMP
}
