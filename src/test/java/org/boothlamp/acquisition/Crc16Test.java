package org.boothlamp.acquisition;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;

import java.nio.charset.StandardCharsets;
import org.junit.jupiter.api.Test;

class Crc16Test {

  private static final byte[] CHECK = "123456789".getBytes(StandardCharsets.US_ASCII);

  /** CRC catalogue, reveng.sourceforge.io/crc-catalogue: CRC-16/IBM-3740, check=0x29b1. */
  @Test
  void shouldGiveTheCheckValueOfTheCatalogue() {
    assertEquals(0x29B1, Crc16.of(CHECK, 0, CHECK.length));
  }

  @Test
  void shouldCoverOnlyTheBytesAskedFor() {
    byte[] surrounded = "xx123456789yy".getBytes(StandardCharsets.US_ASCII);
    assertEquals(0x29B1, Crc16.of(surrounded, 2, CHECK.length));
    assertNotEquals(0x29B1, Crc16.of(surrounded, 2, CHECK.length + 1));
  }

  /** The start value, by the definition of the CRC. */
  @Test
  void shouldStartFromAllOnes() {
    assertEquals(0xFFFF, Crc16.of(CHECK, 0, 0));
  }
}
