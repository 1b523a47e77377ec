package org.boothlamp.acquisition;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;

class SamplingJitterTest {

  private final SamplingJitter jitter = new SamplingJitter(1_000);

  @Test
  void shouldKnowNothingWithoutPairs() {
    assertEquals(0, jitter.quantileNanos(0.99));
    assertTrue(Double.isNaN(jitter.pairsPerSecond()));
    assertNull(jitter.words());
  }

  @Test
  void shouldFindQuantilesToAMicrosecond() {
    for (int micros = 1; micros <= 1_000; micros++) {
      jitter.add(0, micros * 1_000L - 1);
    }
    assertEquals(500_000, jitter.quantileNanos(0.5));
    assertEquals(990_000, jitter.quantileNanos(0.99));
    assertEquals(999_999, jitter.quantileNanos(1));
    assertEquals(999_999, jitter.worstNanos());
  }

  @Test
  void shouldAnswerWithTheWorstBeyondItsSteps() {
    jitter.add(0, 50_000_000);
    jitter.add(0, 5_000);
    assertEquals(6_000, jitter.quantileNanos(0.5));
    assertEquals(50_000_000, jitter.quantileNanos(0.99));
  }

  @Test
  void shouldMeasureTheRateOfTheLastMoment() {
    for (int pair = 0; pair <= 500; pair++) {
      jitter.add(pair * 1_000_000L, 2_000);
    }
    assertEquals(1_000, jitter.pairsPerSecond(), 1e-9);
    for (int pair = 1; pair <= 250; pair++) {
      jitter.add(500_000_000L + pair * 2_000_000L, 2_000);
    }
    assertEquals(500, jitter.pairsPerSecond(), 1e-9);
    assertEquals(
        "500 of 1000 pairs/s; taken late by 2 µs (half of them less), 2 µs (99 %), 2 µs (worst)",
        jitter.words());
  }

  @Test
  void shouldCallARateSlowOnlyWhenItStaysSo() {
    for (int pair = 0; pair <= 200; pair++) {
      jitter.add(pair * 2_500_000L, 0);
    }
    assertFalse(jitter.isSlow(), "half a second is a program that starts");
    for (int pair = 201; pair <= 300; pair++) {
      jitter.add(pair * 2_500_000L, 0);
    }
    assertTrue(jitter.isSlow());
    for (int pair = 1; pair <= 250; pair++) {
      jitter.add(750_000_000L + pair * 1_000_000L, 0);
    }
    assertFalse(jitter.isSlow());
  }

  @Test
  void shouldNotCountAnInterruptionToTheRate() {
    jitter.add(0, 0);
    jitter.interrupt();
    for (int pair = 0; pair <= 500; pair++) {
      jitter.add(10_000_000_000L + pair * 1_000_000L, 0);
    }
    assertEquals(1_000, jitter.pairsPerSecond(), 1e-9);
  }
}
