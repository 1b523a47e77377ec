package org.boothlamp.acquisition;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.HexFormat;
import org.boothlamp.testing.BoardFrames;
import org.boothlamp.testing.PairStream;
import org.junit.jupiter.api.Test;

class FrameCodecTest {

  private final FrameEncoder encoder = new FrameEncoder();
  private final FrameDecoder decoder = new FrameDecoder();
  private final byte[] wire = new byte[FrameEncoder.LONGEST_WIRE_BYTES];

  private FrameKind decode(byte[] bytes, int length) {
    FrameKind kind = FrameKind.NONE;
    for (int i = 0; i < length; i++) {
      kind = decoder.accept(bytes[i]);
    }
    return kind;
  }

  /** The bytes before the CRC worked out by hand from the layout. */
  @Test
  void shouldPutALampFrameOnTheWireByteForByte() {
    LampFrame lamp = new LampFrame();
    lamp.counter = 0x2A;
    lamp.signalCode = 5;
    int length = encoder.lamp(lamp, wire);
    assertEquals(7, length);
    assertEquals("06102a05", HexFormat.of().formatHex(wire, 0, 4));
    assertEquals(0, wire[6]);
    int crc = Crc16.of(new byte[] {0x10, 0x2A, 0x05}, 0, 3);
    assertEquals(crc, wire[4] & 0xFF | (wire[5] & 0xFF) << 8);
  }

  @Test
  void shouldBringBackALampFrame() {
    LampFrame lamp = new LampFrame();
    lamp.counter = 255;
    lamp.signalCode = 0;
    assertEquals(FrameKind.LAMP, decode(wire, encoder.lamp(lamp, wire)));
    assertEquals(255, decoder.lamp().counter);
    assertEquals(0, decoder.lamp().signalCode);
  }

  @Test
  void shouldBringBackAHello() {
    HelloFrame hello = new HelloFrame();
    hello.pairsPerSecond = 10_000;
    hello.lowestCount = -2048;
    hello.highestCount = 2047;
    hello.boardId("sixteen-chars-id-and-more");
    assertEquals(FrameKind.HELLO, decode(wire, encoder.hello(hello, wire)));
    assertEquals(HelloFrame.VERSION, decoder.hello().version);
    assertEquals(10_000, decoder.hello().pairsPerSecond);
    assertEquals(-2048, decoder.hello().lowestCount);
    assertEquals(2047, decoder.hello().highestCount);
    assertEquals("sixteen-chars-id", decoder.hello().boardId());
  }

  @Test
  void shouldBringBackSamplesFramesOfEverySize() {
    for (int count = 1; count <= SamplesFrame.CAPACITY; count++) {
      SamplesFrame samples = new SamplesFrame();
      samples.count = count;
      samples.counter = count;
      samples.firstIndex = 0xFFFFFF00 + count;
      for (int pair = 0; pair < count; pair++) {
        samples.current[pair] = (short) (pair * 655 - 32768);
        samples.voltage[pair] = (short) (pair % 3 == 0 ? 0 : 32767 - pair);
      }
      assertEquals(FrameKind.SAMPLES, decode(wire, encoder.samples(samples, wire)));
      assertEquals(count, decoder.samples().count);
      assertEquals(count, decoder.samples().counter);
      assertEquals(samples.firstIndex, decoder.samples().firstIndex);
      assertArrayEquals(front(samples.current, count), front(decoder.samples().current, count));
      assertArrayEquals(front(samples.voltage, count), front(decoder.samples().voltage, count));
    }
    assertEquals(0, decoder.badFrames());
  }

  private static short[] front(short[] counts, int count) {
    return Arrays.copyOf(counts, count);
  }

  @Test
  void shouldFitTheLongestFrameIntoItsBuffers() {
    SamplesFrame samples = new SamplesFrame();
    samples.count = SamplesFrame.CAPACITY;
    Arrays.fill(samples.current, (short) 0x5555);
    Arrays.fill(samples.voltage, (short) 0x5555);
    int length = encoder.samples(samples, wire);
    assertTrue(length <= FrameEncoder.LONGEST_WIRE_BYTES);
    assertEquals(FrameKind.SAMPLES, decode(wire, length));
  }

  @Test
  void shouldRefuseToEncodeAFrameWithoutPairs() {
    SamplesFrame samples = new SamplesFrame();
    assertThrows(IllegalArgumentException.class, () -> encoder.samples(samples, wire));
  }

  @Test
  void shouldIgnoreZerosBetweenFrames() {
    byte[] hello = new BoardFrames(PairStream.endless(), 1000).hello();
    assertEquals(FrameKind.NONE, decode(new byte[5], 5));
    assertEquals(FrameKind.HELLO, decode(hello, hello.length));
    assertEquals(0, decoder.badFrames());
  }

  @Test
  void shouldCountABadFrameButNotTheTailBeforeTheFirstZero() {
    assertEquals(FrameKind.NONE, decode(new byte[] {3, 4, 5, 0}, 4));
    assertEquals(0, decoder.badFrames());
    assertEquals(FrameKind.BAD, decode(new byte[] {3, 4, 5, 0}, 4));
    assertEquals(1, decoder.badFrames());
  }

  @Test
  void shouldTakeAWholeFrameBeforeTheFirstZero() {
    byte[] hello = new BoardFrames(PairStream.endless(), 1000).hello();
    assertEquals(FrameKind.HELLO, decode(hello, hello.length));
  }

  @Test
  void shouldCountAnEndlessFrameOnceAndGoOn() {
    decoder.accept((byte) 0);
    for (int i = 0; i < 100_000; i++) {
      assertEquals(FrameKind.NONE, decoder.accept((byte) 1));
    }
    assertEquals(FrameKind.BAD, decoder.accept((byte) 0));
    byte[] hello = new BoardFrames(PairStream.endless(), 1000).hello();
    assertEquals(FrameKind.HELLO, decode(hello, hello.length));
    assertEquals(1, decoder.badFrames());
  }

  @Test
  void shouldRefuseAnUnknownTypeAndAWrongLengthEvenIfTheCrcIsRight() {
    decoder.accept((byte) 0);
    for (int type : new int[] {0x00, 0x01, 0x02, 0x03, 0x10, 0xFF}) {
      byte[] plain = new byte[12];
      plain[0] = (byte) type;
      plain[6] = 1;
      int crc = Crc16.of(plain, 0, 10);
      Frames.put16(plain, 10, crc);
      byte[] encoded = new byte[20];
      int length = Cobs.encode(plain, 0, 12, encoded, 0);
      assertEquals(FrameKind.BAD, decode(encoded, length + 1), () -> "type " + type);
    }
    assertEquals(6, decoder.badFrames());
  }
}
