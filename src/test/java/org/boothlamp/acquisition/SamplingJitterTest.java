package org.boothlamp.acquisition;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;

class SamplingJitterTest {

  private final SamplingJitter jitter = new SamplingJitter(1_000);
  private long nanos;

  @Test
  void shouldKnowNothingWithoutPairs() {
    assertEquals(0, jitter.quantileNanos(0.99));
    assertTrue(Double.isNaN(jitter.pairsPerSecond()));
    assertNull(jitter.words(0));
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

  /** Lets pairs pass, the last of them {@code seconds} later. */
  private void pass(double seconds, double pairsPerSecond) {
    long step = Math.round(1e9 / pairsPerSecond);
    for (int pair = 0; pair < seconds * pairsPerSecond; pair++) {
      nanos += step;
      jitter.add(nanos, 2_000);
    }
  }

  @Test
  void shouldMeasureTheRateAfterASecondOfWarmUp() {
    pass(1.0025, 400);
    pass(1.8, 1_000);
    assertTrue(Double.isNaN(jitter.pairsPerSecond()), "2 s are not over yet");
    assertNull(jitter.words(3));
    pass(0.6, 1_000);
    assertEquals(1_000, jitter.pairsPerSecond(), 1e-9);
    assertFalse(jitter.isSlow());
  }

  @Test
  void shouldTellTheRateOfTheLastTenSeconds() {
    pass(11.2, 1_000);
    pass(5, 500);
    assertEquals(750, jitter.pairsPerSecond(), 15);
    assertEquals(
        "750 of 1000 pairs/s over the last 10 s, 2500 of 16200 pairs lost since the start; taken"
            + " late by 2 µs (half of them less), 2 µs (99 %), 2 µs (worst)",
        jitter.words(2_500).replaceFirst("7[0-9]+ of", "750 of"));
  }

  @Test
  void shouldCallThreePercentOfTwoSecondsSlow() {
    pass(4, 1_000);
    pass(1.5, 965);
    assertFalse(jitter.isSlow());
    pass(1, 965);
    assertTrue(jitter.isSlow());
    assertEquals("965 over 2 s", jitter.achievedWords().substring(0, 12));
    pass(9, 1_000);
    assertFalse(jitter.isSlow(), "it is over when less than half a percent of 10 s is missing");
  }

  @Test
  void shouldCallOnePercentOfTenSecondsSlow() {
    pass(10, 985);
    assertFalse(jitter.isSlow());
    pass(1.6, 985);
    assertTrue(jitter.isSlow());
    pass(5, 1_000);
    assertTrue(jitter.isSlow(), "a rate at the limit must not come and go");
    pass(5, 1_000);
    assertFalse(jitter.isSlow());
  }

  @Test
  void shouldNotCallOnePauseSlow() {
    pass(11.5, 1_000);
    nanos += 50_000_000;
    pass(1, 1_000);
    assertFalse(jitter.isSlow());
  }

  @Test
  void shouldNotCountAnInterruptionToTheRate() {
    pass(5, 900);
    assertTrue(jitter.isSlow());
    jitter.interrupt();
    assertFalse(jitter.isSlow(), "nothing is known of it now");
    nanos += 10_000_000_000L;
    pass(2.5, 1_000);
    assertEquals(1_000, jitter.pairsPerSecond(), 1e-9);
  }
}
