package org.boothlamp.acquisition;

import java.util.Arrays;
import java.util.BitSet;
import java.util.Random;

/**
 * A line that flips, drops and adds bytes both ways, and knows which frames came through whole.
 *
 * <p>It follows the bytes before it harms them, so it knows the board's index of every pair that
 * was sent. The first hello is spared. Reading and writing from one thread.
 */
final class DamagingLine implements ByteLine {

  /** Bytes between two kinds of harm on the way to the host, about twice the mean. */
  private static final int CLEAN_BYTES = 4000;

  private final ByteLine line;
  private final Random random;
  private final FrameDecoder before = new FrameDecoder();
  private final byte[] arrived = new byte[4096];
  private final BitSet wholePairs = new BitSet();
  private boolean helloSeen;
  private boolean frameIsHarmed;
  private boolean frameHasBegun;
  private int cleanBytesLeft = CLEAN_BYTES;
  private int harmedFrames;
  private int harmOneWriteIn = Integer.MAX_VALUE;

  DamagingLine(ByteLine line, long seed) {
    this.line = line;
    random = new Random(seed);
  }

  /** Harms one of so many writes on average from now on. */
  void harmOneWriteIn(int writes) {
    harmOneWriteIn = writes;
  }

  /** Board indexes of the pairs whose frames came through whole. */
  BitSet wholePairs() {
    return wholePairs;
  }

  /** Samples frames that were harmed. */
  int harmedFrames() {
    return harmedFrames;
  }

  @Override
  public int read(byte[] buffer, long waitNanos) {
    int count = line.read(arrived, waitNanos);
    int out = 0;
    for (int i = 0; i < count; i++) {
      out = carry(arrived[i], buffer, out);
    }
    return count < 0 ? count : out;
  }

  private int carry(byte next, byte[] buffer, int to) {
    boolean harmNow = helloSeen && --cleanBytesLeft <= 0 && frameHasBegun;
    int out = harmNow ? harm(next, buffer, to) : put(next, buffer, to);
    frameIsHarmed |= harmNow;
    follow(next);
    // Without the zero between them a frame and the next one are lost together.
    frameIsHarmed |= next == 0 && !endsWithZero(buffer, out);
    frameHasBegun = next != 0;
    return out;
  }

  private int harm(byte next, byte[] buffer, int to) {
    cleanBytesLeft = 100 + random.nextInt(CLEAN_BYTES);
    int kind = random.nextInt(3);
    if (kind == 0) {
      return put((byte) (next ^ 1 << random.nextInt(8)), buffer, to);
    }
    if (kind == 1) {
      return to;
    }
    // An added zero before the frame's own would only make an empty frame.
    int out = put((byte) (next == 0 ? 1 + random.nextInt(255) : random.nextInt(256)), buffer, to);
    return put(next, buffer, out);
  }

  private static boolean endsWithZero(byte[] buffer, int length) {
    return length > 0 && buffer[length - 1] == 0;
  }

  private static int put(byte next, byte[] buffer, int to) {
    buffer[to] = next;
    return to + 1;
  }

  private void follow(byte next) {
    FrameKind kind = before.accept(next);
    helloSeen |= kind == FrameKind.HELLO;
    if (kind == FrameKind.SAMPLES && helloSeen) {
      int first = before.samples().firstIndex;
      wholePairs.set(first, first + before.samples().count, !frameIsHarmed);
      harmedFrames += frameIsHarmed ? 1 : 0;
    }
    frameIsHarmed &= kind == FrameKind.NONE;
  }

  @Override
  public boolean write(byte[] bytes, int length) {
    if (random.nextInt(harmOneWriteIn) != 0) {
      return line.write(bytes, length);
    }
    byte[] harmed = Arrays.copyOf(bytes, length);
    harmed[random.nextInt(length - 1)] ^= (byte) (1 << random.nextInt(8));
    int cut = random.nextInt(3) == 0 ? 1 + random.nextInt(length - 1) : length;
    line.write(harmed, cut);
    return false;
  }

  @Override
  public int openings() {
    return line.openings();
  }

  @Override
  public SourceException failure() {
    return line.failure();
  }

  @Override
  public void close() {
    line.close();
  }
}
