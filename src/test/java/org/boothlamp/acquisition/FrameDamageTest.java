package org.boothlamp.acquisition;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayOutputStream;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.boothlamp.testing.BoardFrames;
import org.boothlamp.testing.PairStream;
import org.junit.jupiter.api.Test;

/** Damage anywhere in a stream costs the frames it touches and no other. */
class FrameDamageTest {

  private static final int FRAMES = 7;

  private final byte[] stream;

  /** Frame that each byte belongs to, its closing zero included; -1 for the zero in front. */
  private final int[] frameOfByte;

  private final List<String> frames;

  FrameDamageTest() {
    BoardFrames board = new BoardFrames(PairStream.endless(), 10_000);
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    List<Integer> owners = new ArrayList<>(List.of(-1));
    bytes.write(0);
    for (int frame = 0; frame < FRAMES; frame++) {
      for (byte next : encoded(board, frame)) {
        bytes.write(next);
        owners.add(frame);
      }
    }
    stream = bytes.toByteArray();
    frameOfByte = owners.stream().mapToInt(Integer::intValue).toArray();
    frames = texts(stream);
  }

  private static byte[] encoded(BoardFrames board, int frame) {
    return switch (frame) {
      case 1 -> board.hello();
      case 2 -> board.samples(1);
      case 3 -> board.samples(100);
      case 4 -> board.samples(8);
      case 5 -> {
        board.says().boardId("another");
        yield board.hello();
      }
      default -> board.samples(25);
    };
  }

  /** The numbers of the frames found in a damaged stream; -1 for one that was never sent. */
  private List<Integer> decode(byte[] bytes) {
    return texts(bytes).stream().map(frames::indexOf).toList();
  }

  private static List<String> texts(byte[] bytes) {
    FrameDecoder decoder = new FrameDecoder();
    List<String> decoded = new ArrayList<>();
    for (byte next : bytes) {
      FrameKind kind = decoder.accept(next);
      if (kind == FrameKind.SAMPLES) {
        SamplesFrame samples = decoder.samples();
        decoded.add(
            Integer.toUnsignedString(samples.firstIndex)
                + Arrays.toString(Arrays.copyOf(samples.current, samples.count))
                + Arrays.toString(Arrays.copyOf(samples.voltage, samples.count)));
      } else if (kind == FrameKind.HELLO) {
        decoded.add(decoder.hello().boardId() + decoder.hello().pairsPerSecond);
      } else if (kind == FrameKind.LAMP) {
        decoded.add("an invented lamp frame");
      }
    }
    return decoded;
  }

  private static List<Integer> all() {
    return new ArrayList<>(List.of(0, 1, 2, 3, 4, 5, 6));
  }

  /** A damaged zero joins its frame with the next, so both are lost. */
  private List<Integer> without(int byteIndex) {
    List<Integer> left = all();
    left.remove(Integer.valueOf(frameOfByte[byteIndex]));
    if (stream[byteIndex] == 0) {
      left.remove(Integer.valueOf(frameOfByte[byteIndex] + 1));
    }
    return left;
  }

  @Test
  void shouldLoseOnlyTheFrameInWhichABitFlips() {
    assertEquals(all(), decode(stream));
    for (int at = 1; at < stream.length; at++) {
      for (int bit = 0; bit < 8; bit++) {
        byte[] damaged = stream.clone();
        damaged[at] ^= (byte) (1 << bit);
        int where = at;
        assertEquals(without(at), decode(damaged), () -> "bit flipped in byte " + where);
      }
    }
  }

  @Test
  void shouldLoseOnlyTheFrameFromWhichAByteIsMissing() {
    for (int at = 1; at < stream.length; at++) {
      byte[] damaged = new byte[stream.length - 1];
      System.arraycopy(stream, 0, damaged, 0, at);
      System.arraycopy(stream, at + 1, damaged, at, damaged.length - at);
      int where = at;
      assertEquals(without(at), decode(damaged), () -> "dropped byte " + where);
    }
  }

  /** A zero put in front of a frame costs nothing; anything else costs the frame it is put into. */
  @Test
  void shouldLoseAtMostTheFrameIntoWhichAByteIsPut() {
    for (int at = 1; at < stream.length; at++) {
      for (int value = 0; value < 256; value++) {
        byte[] damaged = new byte[stream.length + 1];
        System.arraycopy(stream, 0, damaged, 0, at);
        damaged[at] = (byte) value;
        System.arraycopy(stream, at, damaged, at + 1, stream.length - at);
        List<Integer> left = all();
        left.remove(Integer.valueOf(frameOfByte[at]));
        List<Integer> decoded = decode(damaged);
        int where = at;
        boolean zeroBetweenFrames = value == 0 && (stream[at] == 0 || stream[at - 1] == 0);
        assertEquals(zeroBetweenFrames ? all() : left, decoded, () -> "byte put at " + where);
      }
    }
  }

  @Test
  void shouldCountWhatItThrowsAway() {
    byte[] damaged = stream.clone();
    damaged[3] ^= 0x10;
    FrameDecoder decoder = new FrameDecoder();
    for (byte next : damaged) {
      decoder.accept(next);
    }
    assertTrue(decoder.badFrames() >= 1, "counted " + decoder.badFrames());
  }
}
