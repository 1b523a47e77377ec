package org.boothlamp.lamp;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;

class OutputHealthTest {

  private final OutputHealth health = new OutputHealth();

  @Test
  void shouldSayTheFirstFailureOfARowOnly() {
    assertTrue(health.failed(0));
    for (long second = 1; second < 200; second++) {
      assertFalse(health.failed(second * 1_000_000_000L));
    }
    assertEquals(200, health.failures());
  }

  @Test
  void shouldSayThatItWorksAgainOnceWithTheCount() {
    health.failed(0);
    health.failed(1);
    assertEquals(2, health.worked());
    assertEquals(0, health.worked());
  }

  @Test
  void shouldBeQuietForAMinuteWhenItComesAndGoes() {
    health.failed(0);
    health.worked();
    assertFalse(health.failed(OutputHealth.QUIET_NANOS - 1));
    assertEquals(0, health.worked(), "what was not said needs no end");
    assertTrue(health.failed(OutputHealth.QUIET_NANOS));
    assertEquals(1, health.worked());
  }

  @Test
  void shouldRestTwiceAsLongAfterEachFailureUpToASecond() {
    long nowNanos = -7;
    long restNanos = OutputHealth.SHORTEST_REST_NANOS;
    for (int k = 0; k < 10; k++) {
      health.failed(nowNanos);
      assertTrue(health.isResting(nowNanos + restNanos - 1));
      nowNanos += restNanos;
      assertFalse(health.isResting(nowNanos));
      restNanos = Math.min(2 * restNanos, OutputHealth.LONGEST_REST_NANOS);
    }
  }

  @Test
  void shouldNotRestOnceItWorks() {
    health.failed(0);
    health.worked();
    assertFalse(health.isResting(1));
  }
}
