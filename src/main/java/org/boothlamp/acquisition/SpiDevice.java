package org.boothlamp.acquisition;

/**
 * Converters of eight inputs on SPI, and their frames of 24 clocks.
 *
 * <p>MCP3208: Microchip DS21298E, page 21, "Communication with microcontrollers": five leading
 * zeros, the start bit, single-ended, three bits of the input; the answer has a null bit before its
 * twelve bits. MCP3008: the same with seven leading zeros and ten bits; Microchip DS21295, figure
 * 6-1, from memory. Creates no objects.
 */
public enum SpiDevice {
  /** 12 bits; 2 MHz at 5 V, 1 MHz at 2.7 V. */
  MCP3208("mcp3208", 12, 2_000_000),
  /** 10 bits; 3.6 MHz at 5 V, 1.35 MHz at 2.7 V. */
  MCP3008("mcp3008", 10, 3_600_000);

  /** Inputs of either. */
  public static final int CHANNELS = 8;

  /** Bytes of a frame, out and in. */
  static final int FRAME_BYTES = 3;

  /** Clocks of a frame. */
  public static final int FRAME_CLOCKS = 8 * FRAME_BYTES;

  private static final int START_AND_SINGLE_ENDED = 0b11 << 3;

  private final String word;
  private final int bits;
  private final int mostClockHz;

  /** How far start bit, mode and input are shifted so that the answer ends with the frame. */
  private final int shift;

  SpiDevice(String word, int bits, int mostClockHz) {
    this.word = word;
    this.bits = bits;
    this.mostClockHz = mostClockHz;
    shift = bits + 2;
  }

  /** The word in settings. */
  public String word() {
    return word;
  }

  /** Fastest clock at 5 V, Hz; at 3.3 V it is less. */
  public int mostClockHz() {
    return mostClockHz;
  }

  /** Highest count; the lowest is 0. */
  public int highestCount() {
    return (1 << bits) - 1;
  }

  /** Writes the frame that asks for an input, single-ended. */
  void request(int channel, byte[] frame) {
    int word = (START_AND_SINGLE_ENDED | channel) << shift;
    frame[0] = (byte) (word >> 16);
    frame[1] = (byte) (word >> 8);
    frame[2] = (byte) word;
  }

  /**
   * True if the null bit before the count is 0, as every answer has it and a lifted line has not.
   */
  boolean isAnswer(byte[] frame) {
    return (low16(frame) >> bits & 1) == 0;
  }

  /** The count in an answer. */
  short count(byte[] frame) {
    return (short) (low16(frame) & highestCount());
  }

  private static int low16(byte[] frame) {
    return (frame[1] & 0xFF) << 8 | frame[2] & 0xFF;
  }
}
