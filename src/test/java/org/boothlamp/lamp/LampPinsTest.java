package org.boothlamp.lamp;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.OptionalInt;
import org.junit.jupiter.api.Test;

class LampPinsTest {

  @Test
  void shouldRefuseOnePinForTwoPurposes() {
    IllegalArgumentException refused =
        assertThrows(
            IllegalArgumentException.class,
            () -> new LampPins(17, 27, 22, OptionalInt.of(27), ActiveLevel.HIGH));
    assertEquals(
        "each light needs a pin of its own: red=17, amber=27, green=22, heartbeat=27",
        refused.getMessage());
  }

  @Test
  void shouldRefuseANegativePin() {
    IllegalArgumentException refused =
        assertThrows(
            IllegalArgumentException.class,
            () -> new LampPins(17, -1, 22, OptionalInt.empty(), ActiveLevel.LOW));
    assertEquals("a pin must be >= 0: red=17, amber=-1, green=22", refused.getMessage());
  }
}
