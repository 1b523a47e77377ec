package org.boothlamp.acquisition;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.HexFormat;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class CobsTest {

  private static final HexFormat HEX = HexFormat.of();

  /**
   * Empty frame: examples of Cheshire and Baker 1999 as restated in a public test suite. The rest:
   * encyclopedia table of COBS examples, of which 00 11 00 is from memory.
   */
  @ParameterizedTest
  @CsvSource({
    "'', 01",
    "00, 0101",
    "0000, 010101",
    "001100, 01021101",
    "11220033, 0311220233",
    "11223344, 0511223344",
    "11000000, 0211010101"
  })
  void shouldEncodeAndDecodeThePublishedShortExamples(String plain, String encoded) {
    assertBothWays(HEX.parseHex(plain), HEX.parseHex(encoded));
  }

  /**
   * Frames around a full group of 254 bytes. The first is in the paper's examples as restated in a
   * public test suite; the others are from memory of the encyclopedia's table and were worked out
   * again by hand.
   */
  @Test
  void shouldEncodeAndDecodeThePublishedLongExamples() {
    assertBothWays(range(0x01, 0xFE), join(0xFF, range(0x01, 0xFE)));
    assertBothWays(range(0x00, 0xFE), join(0x01, join(0xFF, range(0x01, 0xFE))));
    assertBothWays(range(0x01, 0xFF), join(join(0xFF, range(0x01, 0xFE)), 0x02, 0xFF));
    assertBothWays(join(range(0x02, 0xFF), 0x00), join(join(0xFF, range(0x02, 0xFF)), 0x01, 0x01));
    assertBothWays(
        join(range(0x03, 0xFF), 0x00, 0x01), join(join(0xFE, range(0x03, 0xFF)), 0x02, 0x01));
  }

  @Test
  void shouldDecodeAnEmptyGroupAfterAFullOneAtTheEnd() {
    byte[] encoded = join(join(0xFF, range(0x01, 0xFE)), 0x01);
    assertArrayEquals(range(0x01, 0xFE), decode(encoded));
  }

  @Test
  void shouldBringBackFramesOfAnyLengthWithoutAZeroOnTheWire() {
    Random random = new Random(1999);
    for (int length = 0; length <= 800; length++) {
      byte[] plain = new byte[length];
      random.nextBytes(plain);
      byte[] sparse = plain.clone();
      for (int i = 0; i < length; i++) {
        sparse[i] = plain[i] < 0 ? 0 : plain[i];
      }
      byte[] dense = new byte[length];
      Arrays.fill(dense, (byte) 0x55);
      for (byte[] frame : new byte[][] {plain, sparse, dense}) {
        byte[] encoded = encode(frame);
        assertTrue(encoded.length <= Cobs.encodedLimit(length));
        assertEquals(0, countZeros(encoded));
        assertArrayEquals(frame, decode(encoded));
      }
    }
  }

  @ParameterizedTest
  @ValueSource(strings = {"", "00", "02", "0311", "0511220033", "0201FF"})
  void shouldRefuseWhatNoEncoderWrites(String encoded) {
    byte[] bytes = HEX.parseHex(encoded);
    assertEquals(Cobs.MALFORMED, Cobs.decode(bytes, 0, bytes.length, new byte[300], 0));
  }

  @Test
  void shouldDecodeInPlaceAndAtOffsets() {
    byte[] bytes = HEX.parseHex("99990311220233");
    int length = Cobs.decode(bytes, 2, 5, bytes, 1);
    assertEquals(4, length);
    assertArrayEquals(HEX.parseHex("11220033"), Arrays.copyOfRange(bytes, 1, 5));
  }

  private static void assertBothWays(byte[] plain, byte[] encoded) {
    assertArrayEquals(encoded, encode(plain));
    assertArrayEquals(plain, decode(encoded));
  }

  private static byte[] encode(byte[] plain) {
    byte[] to = new byte[Cobs.encodedLimit(plain.length)];
    return Arrays.copyOf(to, Cobs.encode(plain, 0, plain.length, to, 0));
  }

  private static byte[] decode(byte[] encoded) {
    byte[] to = new byte[encoded.length];
    return Arrays.copyOf(to, Cobs.decode(encoded, 0, encoded.length, to, 0));
  }

  private static byte[] range(int first, int last) {
    byte[] bytes = new byte[last - first + 1];
    for (int i = 0; i < bytes.length; i++) {
      bytes[i] = (byte) (first + i);
    }
    return bytes;
  }

  private static byte[] join(int first, byte[] rest) {
    byte[] bytes = new byte[rest.length + 1];
    bytes[0] = (byte) first;
    System.arraycopy(rest, 0, bytes, 1, rest.length);
    return bytes;
  }

  private static byte[] join(byte[] front, int... rest) {
    byte[] bytes = Arrays.copyOf(front, front.length + rest.length);
    for (int i = 0; i < rest.length; i++) {
      bytes[front.length + i] = (byte) rest[i];
    }
    return bytes;
  }

  private static int countZeros(byte[] bytes) {
    int zeros = 0;
    for (byte value : bytes) {
      zeros += value == 0 ? 1 : 0;
    }
    return zeros;
  }
}
