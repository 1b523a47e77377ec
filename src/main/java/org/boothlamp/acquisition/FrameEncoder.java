package org.boothlamp.acquisition;

/**
 * Writes frames as they go over the wire, each with the zero that ends it. Creates no objects.
 * Confined to one thread.
 */
public final class FrameEncoder {

  /** Most bytes one frame takes on the wire. */
  public static final int LONGEST_WIRE_BYTES = Frames.LONGEST_ENCODED_BYTES + 1;

  private final byte[] plain = new byte[Frames.LONGEST_BYTES];

  /**
   * Writes a samples frame.
   *
   * @param wire takes up to {@link #LONGEST_WIRE_BYTES} bytes from its start
   * @return bytes written
   */
  public int samples(SamplesFrame frame, byte[] wire) {
    if (frame.count < 1 || frame.count > SamplesFrame.CAPACITY) {
      throw new IllegalArgumentException(
          "a frame holds 1 to " + SamplesFrame.CAPACITY + " pairs: count=" + frame.count);
    }
    plain[0] = Frames.TYPE_SAMPLES;
    plain[1] = (byte) frame.counter;
    Frames.put32(plain, 2, frame.firstIndex);
    plain[6] = (byte) frame.count;
    for (int pair = 0; pair < frame.count; pair++) {
      int at = Frames.SAMPLES_HEAD_BYTES + pair * Frames.PAIR_BYTES;
      Frames.put16(plain, at, frame.current[pair]);
      Frames.put16(plain, at + 2, frame.voltage[pair]);
    }
    return finish(Frames.samplesBytes(frame.count), wire);
  }

  /** Writes a hello frame, as {@link #samples} does. */
  public int hello(HelloFrame frame, byte[] wire) {
    plain[0] = Frames.TYPE_HELLO;
    plain[1] = (byte) frame.version;
    Frames.put32(plain, 2, frame.pairsPerSecond);
    Frames.put16(plain, 6, frame.lowestCount);
    Frames.put16(plain, 8, frame.highestCount);
    System.arraycopy(frame.boardIdBytes, 0, plain, 10, HelloFrame.BOARD_ID_BYTES);
    return finish(Frames.HELLO_BYTES, wire);
  }

  /** Writes a lamp frame, as {@link #samples} does. */
  public int lamp(LampFrame frame, byte[] wire) {
    plain[0] = Frames.TYPE_LAMP;
    plain[1] = (byte) frame.counter;
    plain[2] = (byte) frame.signalCode;
    return finish(Frames.LAMP_BYTES, wire);
  }

  private int finish(int length, byte[] wire) {
    int covered = length - Frames.CRC_BYTES;
    Frames.put16(plain, covered, Crc16.of(plain, 0, covered));
    int encoded = Cobs.encode(plain, 0, length, wire, 0);
    wire[encoded] = Frames.DELIMITER;
    return encoded + 1;
  }
}
