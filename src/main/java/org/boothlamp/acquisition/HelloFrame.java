package org.boothlamp.acquisition;

import java.nio.charset.StandardCharsets;
import java.util.Arrays;

/** What a board says of itself; one object is filled again. Confined to one thread. */
public final class HelloFrame {

  /** The version of the frames that this program speaks. */
  public static final int VERSION = 1;

  /** Length of the board id, bytes. */
  public static final int BOARD_ID_BYTES = 16;

  /** Version of the frames, 0 to 255. */
  public int version = VERSION;

  /** Rate, modulo 2^32: a negative number is a rate above 2^31. */
  public int pairsPerSecond;

  /** Lowest count of the converter. */
  public short lowestCount;

  /** Highest count of the converter. */
  public short highestCount;

  /** Board id in ASCII, zeros after it. */
  public final byte[] boardIdBytes = new byte[BOARD_ID_BYTES];

  /** Sets the board id; what does not fit into 16 bytes is cut off. */
  public void boardId(String boardId) {
    byte[] ascii = boardId.getBytes(StandardCharsets.US_ASCII);
    Arrays.fill(boardIdBytes, (byte) 0);
    System.arraycopy(ascii, 0, boardIdBytes, 0, Math.min(ascii.length, BOARD_ID_BYTES));
  }

  /** The board id up to the first zero. */
  public String boardId() {
    int length = 0;
    while (length < BOARD_ID_BYTES && boardIdBytes[length] != 0) {
      length++;
    }
    return new String(boardIdBytes, 0, length, StandardCharsets.US_ASCII);
  }

  /** True if both say the same; creates nothing. */
  boolean saysTheSameAs(HelloFrame other) {
    return version == other.version
        && pairsPerSecond == other.pairsPerSecond
        && lowestCount == other.lowestCount
        && highestCount == other.highestCount
        && Arrays.equals(boardIdBytes, other.boardIdBytes);
  }

  /** Becomes a copy of {@code other}. */
  void set(HelloFrame other) {
    version = other.version;
    pairsPerSecond = other.pairsPerSecond;
    lowestCount = other.lowestCount;
    highestCount = other.highestCount;
    System.arraycopy(other.boardIdBytes, 0, boardIdBytes, 0, BOARD_ID_BYTES);
  }
}
