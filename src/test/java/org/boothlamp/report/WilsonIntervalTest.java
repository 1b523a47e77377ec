package org.boothlamp.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.apache.commons.math3.stat.interval.ConfidenceInterval;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class WilsonIntervalTest {

  /**
   * Newcombe 1998, Statistics in Medicine 17:857, method 3: the cases as later papers list them,
   * the four-digit limits from memory.
   */
  @ParameterizedTest
  @CsvSource({
    "81, 263, 0.2553, 0.3662",
    "15, 148, 0.0624, 0.1605",
    "0, 20, 0.0000, 0.1611",
    "1, 29, 0.0061, 0.1718",
  })
  void shouldGiveThePublishedLimits(int hits, int trials, double low, double high) {
    WilsonInterval interval = WilsonInterval.of((double) hits / trials, trials);
    assertEquals(low, interval.low(), 0.00005);
    assertEquals(high, interval.high(), 0.00005);
  }

  /**
   * The general-purpose library's own; computed by hand as well: 8 of 10 is 0.490162 to 0.943318.
   */
  @ParameterizedTest
  @CsvSource({"8, 10", "5, 10", "20, 20", "4, 20", "0, 1", "1, 1"})
  void shouldAgreeWithCommonsMath(int hits, int trials) {
    ConfidenceInterval reference =
        new org.apache.commons.math3.stat.interval.WilsonScoreInterval()
            .createInterval(trials, hits, 0.95);
    WilsonInterval interval = WilsonInterval.of((double) hits / trials, trials);
    assertEquals(Math.max(0, reference.getLowerBound()), interval.low(), 1e-8);
    assertEquals(Math.min(1, reference.getUpperBound()), interval.high(), 1e-8);
  }

  @Test
  void shouldStayBetweenNothingAndAllForSharesThatAreNoCounts() {
    for (double share = 0; share <= 1; share += 0.01) {
      WilsonInterval interval = WilsonInterval.of(share, 3);
      assertTrue(interval.low() >= 0 && interval.low() <= share + 1e-12);
      assertTrue(interval.high() <= 1 && interval.high() >= share - 1e-12);
    }
  }

  @Test
  void shouldRefuseAShareOfNothing() {
    assertThrows(IllegalArgumentException.class, () -> WilsonInterval.of(Double.NaN, 3));
    assertThrows(IllegalArgumentException.class, () -> WilsonInterval.of(0.5, 0));
  }
}
