package org.boothlamp.page;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.boothlamp.testing.HandTurnedClock;
import org.junit.jupiter.api.Test;

class RateLimitTest {

  private final HandTurnedClock clock = new HandTurnedClock();
  private final RateLimit limit = new RateLimit(3, 1, clock);

  private int turns(String address) {
    int turns = 0;
    while (limit.allows(address)) {
      turns++;
    }
    return turns;
  }

  @Test
  void shouldGiveEachAddressItsOwnTurnsAndMoreWithTime() {
    assertEquals(3, turns("192.0.2.1"));
    assertEquals(3, turns("192.0.2.2"));
    clock.advanceMillis(2_000);
    assertEquals(2, turns("192.0.2.1"));
    clock.advanceMillis(60_000);
    assertEquals(3, turns("192.0.2.1"), "never more at once");
  }

  @Test
  void shouldRememberTheLatestOfManyAddresses() {
    for (int k = 0; k < 100_000; k++) {
      assertTrue(limit.allows("address " + k));
    }
    assertEquals(2, turns("address 99999"));
    assertFalse(limit.allows("address 99999"));
  }
}
