package org.boothlamp.calibration;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Random;
import java.util.function.LongToDoubleFunction;
import org.boothlamp.calibration.StabilityRule.Stability;
import org.junit.jupiter.api.Test;

/** Ten seconds of counts, and whether they are stable. */
class AveragingWindowTest {

  private static final int RATE = 1000;
  private static final StabilityRule RULE = new StabilityRule(2000);

  private final AveragingWindow window = new AveragingWindow(RATE, -2048, 2047);
  private final Random random = new Random(7);
  private long index;

  private void feed(double seconds, LongToDoubleFunction counts) {
    short[] block = new short[37];
    long end = index + Math.round(seconds * RATE);
    while (index < end) {
      int count = (int) Math.min(block.length, end - index);
      for (int i = 0; i < count; i++) {
        block[i] = (short) Math.round(counts.applyAsDouble(index + i));
      }
      window.accept(block, count, index);
      index += count;
    }
  }

  private Stability judged() {
    return RULE.judge(window.figures());
  }

  private double noise(double deviation) {
    return deviation * random.nextGaussian();
  }

  @Test
  void shouldKnowMeanAndScatterOfTheLastTenSeconds() {
    feed(5, k -> 700);
    feed(10, k -> k % 2 == 0 ? 99 : 103);
    WindowFigures figures = window.figures();
    assertEquals(101, figures.mean());
    assertEquals(2 * Math.sqrt(10_000.0 / 9_999), figures.standardDeviation(), 1e-12);
    assertEquals(10_000, figures.readings());
    assertEquals(0, figures.drift(), 1e-9);
    assertEquals(Stability.STABLE, judged());
  }

  @Test
  void shouldNotBeStableBeforeTenSecondsAreOver() {
    feed(9.9, k -> 500);
    assertEquals(Stability.TOO_SHORT, judged());
    assertEquals(9.9, window.figures().seconds());
    feed(0.1, k -> 500);
    assertEquals(Stability.STABLE, judged());
  }

  @Test
  void shouldMeasureTheDriftOfARamp() {
    feed(10, k -> 300 + 20.0 * k / RATE);
    assertEquals(200, window.figures().drift(), 0.2);
    assertEquals(Stability.DRIFTS, judged());
  }

  @Test
  void shouldTakeADriftOfLessThanACountAsNone() {
    feed(10, k -> 300.2 + 0.06 * k / RATE + noise(2));
    assertEquals(Stability.STABLE, judged());
  }

  @Test
  void shouldSeeADriftBelowTheNoiseOfSingleReadings() {
    feed(10, k -> 300 + 0.4 * k / RATE + noise(6));
    assertEquals(Stability.DRIFTS, judged());
  }

  @Test
  void shouldSeldomRefuseMereNoise() {
    int stable = 0;
    for (int trial = 0; trial < 100; trial++) {
      feed(10, k -> 300 + noise(30));
      stable += judged() == Stability.STABLE ? 1 : 0;
    }
    // three standard errors: 99.7 of 100
    assertTrue(stable >= 97, "stable: " + stable);
  }

  @Test
  void shouldSeeAStepAndForgetItTenSecondsLater() {
    feed(10, k -> 300 + noise(1));
    feed(0.5, k -> 320 + noise(1));
    assertFalse(judged() == Stability.STABLE);
    feed(9.5, k -> 320 + noise(1));
    assertEquals(Stability.STABLE, judged());
  }

  @Test
  void shouldSeeThatOneHalfIsNoisier() {
    feed(5, k -> 300 + noise(1));
    feed(5, k -> 300 + (k % 2 == 0 ? 9 : -9));
    assertEquals(Stability.UNEVEN, judged());
  }

  @Test
  void shouldSeeTheConvertersEnd() {
    feed(10, k -> Math.min(2047, 2040 + noise(4)));
    assertEquals(Stability.CLIPPED, judged());
  }

  @Test
  void shouldBeginAnewAfterMissingPairs() {
    feed(10, k -> 300);
    index += 3;
    feed(1, k -> 300);
    assertEquals(1, window.gaps());
    assertEquals(1, window.figures().seconds());
  }

  @Test
  void shouldAverageTheMeterOverTheSameTime() {
    window.acceptReference(999);
    feed(0.6, k -> 10);
    for (int second = 0; second < 10; second++) {
      feed(0.5, k -> 10);
      window.acceptReference(second % 2 == 0 ? 4 : 6);
      feed(0.5, k -> 10);
    }
    ReferenceFigures reference = window.figures().reference();
    assertEquals(10, reference.readings());
    assertEquals(5, reference.mean());
    assertEquals(Math.sqrt(10.0 / 9), reference.standardDeviation(), 1e-12);
  }

  @Test
  void shouldNotTakeAReadingOfTheMeterThatWasBegunBefore() {
    feed(0.4, k -> 10);
    window.acceptReference(999);
    feed(9.6, k -> 10);
    assertEquals(0, window.figures().reference().readings());
  }

  @Test
  void shouldForgetTheOldLevel() {
    feed(10, k -> 300);
    window.acceptReference(3);
    window.clear();
    assertEquals(0, window.figures().readings());
    feed(10, k -> -40);
    assertEquals(-40, window.figures().mean());
    assertEquals(0, window.figures().reference().readings());
  }
}
