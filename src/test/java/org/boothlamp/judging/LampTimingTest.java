package org.boothlamp.judging;

import static org.boothlamp.judging.Level.AMBER;
import static org.boothlamp.judging.Level.GREEN;
import static org.boothlamp.judging.Level.RED;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

class LampTimingTest {

  private static final long HOLD_SLOTS = 50;

  private final LampTiming timing = new LampTiming(HOLD_SLOTS);

  /** One judgement every 0.1 s. */
  private List<Level> show(Level... judged) {
    List<Level> shown = new ArrayList<>();
    for (int k = 0; k < judged.length; k++) {
      shown.add(timing.show(judged[k], 100 + 10L * k));
    }
    return shown;
  }

  @Test
  void shouldShowTheFirstLevelAtOnce() {
    for (Level level : Level.values()) {
      timing.clear();
      assertEquals(level, timing.show(level, 7));
    }
  }

  @Test
  void shouldShowAWorseLevelAtOnce() {
    assertEquals(List.of(GREEN, AMBER, RED), show(GREEN, AMBER, RED));
  }

  @Test
  void shouldShowABetterLevelAfterHalfASecond() {
    assertEquals(
        List.of(RED, RED, RED, RED, RED, RED, GREEN),
        show(RED, GREEN, GREEN, GREEN, GREEN, GREEN, GREEN));
  }

  @Test
  void shouldStayRedWhenItIsRedAgainBeforeHalfASecond() {
    assertEquals(
        List.of(RED, RED, RED, RED, RED, RED, RED, RED, RED, RED, RED),
        show(RED, GREEN, GREEN, GREEN, GREEN, RED, GREEN, GREEN, GREEN, GREEN, GREEN));
  }

  @Test
  void shouldGoByAmberWhenOnlyRedIsLongOver() {
    assertEquals(
        List.of(RED, RED, RED, RED, RED, RED, AMBER, AMBER, AMBER, AMBER, GREEN),
        show(RED, AMBER, AMBER, AMBER, AMBER, GREEN, GREEN, GREEN, GREEN, GREEN, GREEN));
  }

  @Test
  void shouldFallBackToAmberAndNotFurther() {
    assertEquals(
        List.of(GREEN, AMBER, AMBER, RED, RED, RED, RED, RED, RED, AMBER),
        show(GREEN, AMBER, GREEN, RED, AMBER, GREEN, AMBER, GREEN, AMBER, AMBER));
  }

  @Test
  void shouldShowAnythingAtOnceAfterClear() {
    show(RED);
    timing.clear();
    assertEquals(List.of(GREEN), show(GREEN));
  }

  /**
   * A level holds until the next judgement; the lamp shows the worst that held in the last 0.5 s.
   */
  @Test
  void shouldShowTheWorstLevelOfTheHoldingTime() {
    Random random = new Random(42);
    for (int run = 0; run < 200; run++) {
      timing.clear();
      List<Level> judged = new ArrayList<>();
      List<Long> slots = new ArrayList<>();
      long slot = random.nextInt(1_000);
      for (int k = 0; k < 200; k++) {
        slot += 1 + random.nextInt(25);
        judged.add(Level.values()[random.nextInt(3)]);
        slots.add(slot);
        assertEquals(worstHeld(judged, slots), timing.show(judged.get(k), slot));
      }
    }
  }

  private static Level worstHeld(List<Level> judged, List<Long> slots) {
    int now = judged.size() - 1;
    Level worst = judged.get(now);
    for (int k = now; k > 0 && slots.get(k) > slots.get(now) - HOLD_SLOTS; k--) {
      worst = worst.worse(judged.get(k - 1));
    }
    return worst;
  }

  /** However wild the levels: what the lamp shows it shows, or worse, for at least 0.5 s. */
  @Test
  void shouldNeverGoBackToBetterWithinTheHoldingTime() {
    Random random = new Random(1);
    Level last = GREEN;
    long worseSince = -HOLD_SLOTS;
    int betterings = 0;
    for (long slot = 0; slot < 2_000_000; slot += 10) {
      Level shown =
          timing.show(random.nextInt(8) == 0 ? random.nextInt(2) == 0 ? RED : AMBER : GREEN, slot);
      if (shown.compareTo(last) < 0) {
        assertTrue(slot - worseSince >= HOLD_SLOTS, "flicker at slot " + slot);
        betterings++;
      }
      if (shown.compareTo(last) > 0) {
        worseSince = slot;
      }
      last = shown;
    }
    assertTrue(betterings > 1_000, "the levels should change: " + betterings);
  }

  @Test
  void shouldFollowAtOnceWithoutAHoldingTime() {
    LampTiming immediate = new LampTiming(0);
    assertEquals(RED, immediate.show(RED, 0));
    assertEquals(GREEN, immediate.show(GREEN, 10));
    assertEquals(AMBER, immediate.show(AMBER, 20));
  }
}
