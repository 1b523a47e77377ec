package org.boothlamp.calibration;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Distributions, degrees of freedom and coverage factors against the GUM. */
class CoverageTest {

  private static final double INFINITE = Double.POSITIVE_INFINITY;

  /** Table G.2 of JCGM 100:2008 from memory, all rows recomputed; 1.984 and 2.626 likewise. */
  @ParameterizedTest
  @CsvSource({
    "1, 12.71, 13.97, 63.66",
    "2, 4.30, 4.53, 9.92",
    "3, 3.18, 3.31, 5.84",
    "4, 2.78, 2.87, 4.60",
    "5, 2.57, 2.65, 4.03",
    "9, 2.26, 2.32, 3.25",
    "10, 2.23, 2.28, 3.17",
    "18, 2.10, 2.15, 2.88",
    "20, 2.09, 2.13, 2.85",
    "50, 2.01, 2.05, 2.68",
    "100, 1.98, 2.03, 2.63"
  })
  void shouldGiveTheRowsOfTheTable(int freedom, String t95, String t9545, String t99) {
    assertEquals(t95, twoDecimals(Coverage.factor(freedom, 0.95)));
    assertEquals(t9545, twoDecimals(Coverage.factor(freedom, Coverage.PROBABILITY)));
    assertEquals(t99, twoDecimals(Coverage.factor(freedom, 0.99)));
  }

  private static String twoDecimals(double value) {
    return String.format(Locale.ROOT, "%.2f", value);
  }

  /** The BIPM's calibration policy page: k = 2 for about 95 % with many degrees of freedom. */
  @Test
  void shouldGiveTwoForEndlessDegreesOfFreedom() {
    assertEquals(2, Coverage.factor(INFINITE, Coverage.PROBABILITY), 1e-9);
    assertEquals(2, Coverage.factor(999_999, Coverage.PROBABILITY), 1e-5);
  }

  @Test
  void shouldCutDegreesOfFreedomDown() {
    assertEquals(Coverage.factor(16, 0.99), Coverage.factor(16.99, 0.99), 0);
    assertEquals(Coverage.factor(1, 0.99), Coverage.factor(0.4, 0.99), 0);
  }

  /**
   * JCGM 100:2008 G.4.1, from memory: relative uncertainties of 0.25, 0.57 and 0.82 % from 10, 5
   * and 15 observations. The document takes 18.9987 for 19.
   */
  @Test
  void shouldGiveTheDegreesOfFreedomOfG4() {
    double[] uncertainties = {0.25, 0.57, 0.82};
    double[] freedoms = {9, 4, 14};
    double combined = Math.sqrt(0.25 * 0.25 + 0.57 * 0.57 + 0.82 * 0.82);
    double freedom = Coverage.effectiveFreedom(uncertainties, freedoms);
    assertEquals("1.03", twoDecimals(combined));
    assertEquals(18.9987, freedom, 5e-5);
    double factor = Coverage.factor(Math.rint(freedom), 0.95);
    assertEquals("2.09", twoDecimals(factor));
    assertEquals("2.2", String.format(Locale.ROOT, "%.1f", factor * combined));
  }

  /**
   * JCGM 100:2008 H.1, end gauge, in nanometres: inputs as worked through by a national metrology
   * institute (secondary); degrees of freedom and U99 from memory.
   */
  @Test
  void shouldGiveTheDegreesOfFreedomOfTheEndGauge() {
    double[] difference = {5.8, 3.9, 6.7};
    double differenceFreedom = Coverage.effectiveFreedom(difference, new double[] {24, 5, 8});
    double differenceUncertainty = Math.sqrt(5.8 * 5.8 + 3.9 * 3.9 + 6.7 * 6.7);
    assertEquals("9.7", String.format(Locale.ROOT, "%.1f", differenceUncertainty));
    // the document works on with 9.7 for 9.68
    double published = differenceFreedom * Math.pow(9.7 / differenceUncertainty, 4);
    assertEquals("25.6", String.format(Locale.ROOT, "%.1f", published));

    double[] uncertainties = {25, differenceUncertainty, 2.9, 16.6};
    double freedom =
        Coverage.effectiveFreedom(uncertainties, new double[] {18, differenceFreedom, 50, 2});
    double combined =
        Math.sqrt(
            25 * 25 + differenceUncertainty * differenceUncertainty + 2.9 * 2.9 + 16.6 * 16.6);
    assertEquals(16.76, freedom, 0.01);
    assertEquals(32, Math.round(combined));
    assertEquals("2.92", twoDecimals(Coverage.factor(freedom, 0.99)));
    assertEquals(92.5, Coverage.factor(freedom, 0.99) * combined, 0.1);
  }

  @Test
  void shouldLetLimitsAddNoDoubtAboutTheDoubt() {
    assertEquals(INFINITE, Coverage.effectiveFreedom(new double[] {1, 2}, infinite()));
    assertEquals(
        INFINITE, Coverage.effectiveFreedom(new double[] {0, 2}, new double[] {5, INFINITE}));
  }

  private static double[] infinite() {
    return new double[] {INFINITE, INFINITE};
  }

  /** JCGM 100:2008 4.3.7, 4.3.9, H.1.3.4 and F.2.2.1, from memory. */
  @Test
  void shouldDivideByTheDistributionsDivisor() {
    assertEquals(0.577350, 1 / Distribution.RECTANGULAR.divisor(), 5e-7);
    assertEquals(0.408248, 1 / Distribution.TRIANGULAR.divisor(), 5e-7);
    assertEquals(0.707107, 1 / Distribution.ARCSINE.divisor(), 5e-7);
    assertEquals(1, Distribution.NORMAL.divisor(), 0);
    UncertaintyLine resolution = UncertaintyLine.limit("resolution", 0.5, -2);
    assertEquals(2 * 0.288675, resolution.standardUncertainty(), 1e-6);
  }
}
