package org.boothlamp.judging;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.boothlamp.testing.Plans;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

class ExcursionTrackerTest {

  private final ExcursionTracker tracker = new ExcursionTracker(30);

  @BeforeEach
  void follow() {
    tracker.follow(new CautionBand(Plans.amps(95, 125), 3));
  }

  /** Averages judged every 0.1 s from slot 100 on; true if the last of them ended an excursion. */
  private boolean judge(double... averages) {
    boolean ended = false;
    for (int k = 0; k < averages.length; k++) {
      ended = tracker.accept(averages[k], 100 + 10L * k);
    }
    return ended;
  }

  private void assertExcursion(Side side, long start, long end, double worst) {
    assertEquals(side, tracker.side());
    assertEquals(start, tracker.startSlot());
    assertEquals(end, tracker.endSlot());
    assertEquals(worst, tracker.worst(), 0);
  }

  @Test
  void shouldCallTwoTenthsNoExcursion() {
    assertFalse(judge(110, 130, 130, 110));
  }

  @Test
  void shouldCallThreeTenthsAnExcursion() {
    assertTrue(judge(110, 130, 131, 130, 110));
    assertExcursion(Side.HIGH, 110, 140, 131);
  }

  @Test
  void shouldKeepTheLowestOnTheLowSide() {
    assertTrue(judge(94, 90, 92, 93, 95));
    assertExcursion(Side.LOW, 100, 140, 90);
  }

  @Test
  void shouldTakeTheLimitItselfForInside() {
    assertFalse(judge(125, 125, 95, 95, 110));
  }

  @Test
  void shouldTakeTheCautionBandForInside() {
    assertTrue(judge(130, 130, 130, 124));
    assertExcursion(Side.HIGH, 100, 130, 130);
  }

  @Test
  void shouldBeginAnotherWhereTheSideChanges() {
    assertTrue(judge(130, 130, 130, 80));
    assertExcursion(Side.HIGH, 100, 130, 130);
    assertFalse(tracker.accept(81, 140));
    assertTrue(tracker.accept(110, 160));
    assertExcursion(Side.LOW, 130, 160, 80);
  }

  @Test
  void shouldBeginAnotherThoughTheFirstWasTooShort() {
    assertFalse(judge(130, 80, 80, 80));
    assertTrue(tracker.accept(110, 140));
    assertExcursion(Side.LOW, 110, 140, 80);
  }

  @Test
  void shouldEndAnOpenOneWithTheSegment() {
    judge(110, 130, 135, 140);
    assertTrue(tracker.finish(145));
    assertExcursion(Side.HIGH, 110, 145, 140);
    assertFalse(tracker.finish(200), "it is over");
  }

  @Test
  void shouldNotEndAShortOneAsAnExcursion() {
    judge(110, 130);
    assertFalse(tracker.finish(139));
  }

  @Test
  void shouldForgetAnOpenOneWithAnotherWindow() {
    judge(130, 130, 130, 130);
    follow();
    assertFalse(tracker.accept(110, 200));
  }
}
