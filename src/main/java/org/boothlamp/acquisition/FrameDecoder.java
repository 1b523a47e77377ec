package org.boothlamp.acquisition;

/**
 * Finds frames in a stream of bytes.
 *
 * <p>Give it one byte after the other; when {@link #accept} names a frame, that frame can be read
 * until the next call. Damage costs the frames it touches and no other: the next zero starts
 * afresh. What stands before the first zero may be the rest of a frame whose start was sent before
 * anyone listened, so if that is bad it is not counted. Creates no objects. Confined to one thread.
 */
public final class FrameDecoder {

  private final byte[] bytes = new byte[Frames.LONGEST_ENCODED_BYTES];
  private final SamplesFrame samples = new SamplesFrame();
  private final HelloFrame hello = new HelloFrame();
  private final LampFrame lamp = new LampFrame();

  /** Bytes since the last zero; one more than the buffer holds stands for any number too many. */
  private int held;

  private boolean synchronised;
  private long badFrames;

  /** Takes one byte and says what it completed. */
  public FrameKind accept(byte next) {
    if (next != Frames.DELIMITER) {
      hold(next);
      return FrameKind.NONE;
    }
    int length = held;
    boolean wholeFrame = synchronised;
    held = 0;
    synchronised = true;
    if (length == 0) {
      return FrameKind.NONE;
    }
    FrameKind kind = length > bytes.length ? FrameKind.BAD : parse(length);
    return kind == FrameKind.BAD ? throwAway(wholeFrame) : kind;
  }

  private void hold(byte next) {
    if (held < bytes.length) {
      bytes[held] = next;
    }
    held = Math.min(held + 1, bytes.length + 1);
  }

  private FrameKind throwAway(boolean wholeFrame) {
    if (!wholeFrame) {
      return FrameKind.NONE;
    }
    badFrames++;
    return FrameKind.BAD;
  }

  /** Forgets a frame in progress, for a line that was opened again; keeps the count. */
  public void resynchronise() {
    held = 0;
    synchronised = false;
  }

  private FrameKind parse(int encodedLength) {
    int length = Cobs.decode(bytes, 0, encodedLength, bytes, 0);
    if (length < Frames.SHORTEST_BYTES || !crcIsRight(length)) {
      return FrameKind.BAD;
    }
    return switch (Frames.getU8(bytes, 0)) {
      case Frames.TYPE_SAMPLES -> parseSamples(length);
      case Frames.TYPE_HELLO -> parseHello(length);
      case Frames.TYPE_LAMP -> parseLamp(length);
      default -> FrameKind.BAD;
    };
  }

  private boolean crcIsRight(int length) {
    int covered = length - Frames.CRC_BYTES;
    return Crc16.of(bytes, 0, covered) == Frames.getU16(bytes, covered);
  }

  private FrameKind parseSamples(int length) {
    int count = length > Frames.SAMPLES_HEAD_BYTES ? Frames.getU8(bytes, 6) : 0;
    if (count < 1 || count > SamplesFrame.CAPACITY || length != Frames.samplesBytes(count)) {
      return FrameKind.BAD;
    }
    samples.counter = Frames.getU8(bytes, 1);
    samples.firstIndex = Frames.getI32(bytes, 2);
    samples.count = count;
    for (int pair = 0; pair < count; pair++) {
      int at = Frames.SAMPLES_HEAD_BYTES + pair * Frames.PAIR_BYTES;
      samples.current[pair] = (short) Frames.getU16(bytes, at);
      samples.voltage[pair] = (short) Frames.getU16(bytes, at + 2);
    }
    return FrameKind.SAMPLES;
  }

  private FrameKind parseHello(int length) {
    if (length != Frames.HELLO_BYTES) {
      return FrameKind.BAD;
    }
    hello.version = Frames.getU8(bytes, 1);
    hello.pairsPerSecond = Frames.getI32(bytes, 2);
    hello.lowestCount = (short) Frames.getU16(bytes, 6);
    hello.highestCount = (short) Frames.getU16(bytes, 8);
    System.arraycopy(bytes, 10, hello.boardIdBytes, 0, HelloFrame.BOARD_ID_BYTES);
    return FrameKind.HELLO;
  }

  private FrameKind parseLamp(int length) {
    if (length != Frames.LAMP_BYTES) {
      return FrameKind.BAD;
    }
    lamp.counter = Frames.getU8(bytes, 1);
    lamp.signalCode = Frames.getU8(bytes, 2);
    return FrameKind.LAMP;
  }

  /** The samples frame last completed. */
  public SamplesFrame samples() {
    return samples;
  }

  /** The hello frame last completed. */
  public HelloFrame hello() {
    return hello;
  }

  /** The lamp frame last completed. */
  public LampFrame lamp() {
    return lamp;
  }

  /** Frames thrown away so far. */
  public long badFrames() {
    return badFrames;
  }
}
