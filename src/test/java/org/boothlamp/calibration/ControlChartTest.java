package org.boothlamp.calibration;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

class ControlChartTest {

  private static final long MONTH_MILLIS = Math.round(365.25 / 12 * 86_400_000);

  /** Scatters by one standard deviation of its moving ranges and more, and breaks no rule. */
  private static final double[] QUIET = {0.1, -0.1, 0.1, -0.1, 0.1, -0.1, 0.1, -0.1, 0.1, -0.1};

  private static CalibrationCheck check(int month, double share, long calibration) {
    return new CalibrationCheck(
        Channel.CURRENT,
        calibration,
        month * MONTH_MILLIS,
        "K2",
        "m",
        100,
        100 + 2 * share,
        0.1,
        9,
        2);
  }

  private static ControlChart chart(double... shares) {
    List<CalibrationCheck> checks = new ArrayList<>();
    for (double share : shares) {
      checks.add(check(checks.size(), share, 1));
    }
    return ControlChart.of(checks);
  }

  private static ControlChart afterQuiet(double... end) {
    double[] all = new double[QUIET.length + end.length];
    System.arraycopy(QUIET, 0, all, 0, QUIET.length);
    System.arraycopy(end, 0, all, QUIET.length, end.length);
    return chart(all);
  }

  /** Flow rates of the NIST/SEMATECH e-Handbook of Statistical Methods 6.3.2.2 (from memory). */
  @Test
  void shouldFindTheLimitsOfAPublishedIndividualsChart() {
    ControlLimits limits =
        ControlLimits.of(List.of(49.6, 47.6, 49.9, 51.3, 47.8, 51.2, 52.6, 52.4, 53.6, 52.1));
    assertEquals(50.81, limits.centre(), 1e-9);
    assertEquals(55.8041, limits.upper(), 5e-5);
    assertEquals(45.8159, limits.lower(), 5e-5);
  }

  @Test
  void shouldFindNothingInAQuietRun() {
    ControlChart quiet = chart(QUIET);
    assertNotNull(quiet.limits());
    assertEquals(List.of(), quiet.brokenRules());
    assertFalse(quiet.drift().isSignificant());
    assertTrue(Double.isNaN(quiet.drift().monthsToLimit()));
  }

  @Test
  void shouldSeeOneCheckFarOff() {
    assertEquals(List.of(ControlRule.BEYOND_THREE_SIGMA), afterQuiet(1.2).brokenRules());
    assertEquals(List.of(ControlRule.BEYOND_THREE_SIGMA), afterQuiet(-1.2).brokenRules());
  }

  @Test
  void shouldForgiveOneCheckFarOffOnceLaterOnesAreRight() {
    assertEquals(List.of(), afterQuiet(1.2, 0, 0.1, -0.1, 0).brokenRules());
  }

  @Test
  void shouldSeeTwoOfThreeFarOffOnOneSideAndNotOnTwo() {
    assertTrue(ControlRule.TWO_OF_THREE.isBrokenBy(List.of(2.1, 0.3, 2.2)));
    assertFalse(ControlRule.TWO_OF_THREE.isBrokenBy(List.of(2.1, 0.3, -2.2)));
    assertFalse(ControlRule.TWO_OF_THREE.isBrokenBy(List.of(2.1, 2.2, 0.3)));
    assertFalse(ControlRule.TWO_OF_THREE.isBrokenBy(List.of(2.1, 2.2)));
  }

  @Test
  void shouldSeeFourOfFiveOffOnOneSide() {
    assertTrue(ControlRule.FOUR_OF_FIVE.isBrokenBy(List.of(-1.1, -1.2, 0.3, -1.1, -1.4)));
    assertFalse(ControlRule.FOUR_OF_FIVE.isBrokenBy(List.of(-1.1, 0.2, 0.3, -1.1, -1.4)));
  }

  @Test
  void shouldSeeEightOnOneSide() {
    List<Double> seven = List.of(0.1, 0.2, 0.1, 0.3, 0.1, 0.2, 0.1);
    List<Double> eight = new ArrayList<>(seven);
    eight.add(0.4);
    assertFalse(ControlRule.EIGHT_ON_ONE_SIDE.isBrokenBy(seven));
    assertTrue(ControlRule.EIGHT_ON_ONE_SIDE.isBrokenBy(eight));
  }

  @Test
  void shouldSeeSixThatRiseOneAfterTheOther() {
    assertTrue(ControlRule.SIX_IN_A_ROW.isBrokenBy(List.of(-0.4, -0.2, 0.0, 0.1, 0.2, 0.5)));
    assertTrue(ControlRule.SIX_IN_A_ROW.isBrokenBy(List.of(0.5, 0.2, 0.1, 0.0, -0.2, -0.4)));
    assertFalse(ControlRule.SIX_IN_A_ROW.isBrokenBy(List.of(-0.4, -0.2, -0.2, 0.1, 0.2, 0.5)));
  }

  @Test
  void shouldSetNoLimitsOnAShortRunAndOnOneThatDoesNotScatter() {
    assertNull(chart(0.1, 0.2, 0.1, 0.2, 0.1, 0.2, 0.1).limits());
    assertNull(chart(0, 0, 0, 0, 0, 0, 0, 0).limits());
    assertEquals(List.of(), chart(0, 0, 0, 0, 0, 0, 0, 0).brokenRules());
  }

  @Test
  void shouldTellADriftAndWhenItReachesTheLimit() {
    ControlDrift drift = chart(0, 0.11, 0.19, 0.31, 0.39, 0.51).drift();
    assertEquals(0.1, drift.sharePerMonth(), 0.01);
    assertTrue(drift.isSignificant());
    assertEquals(5, drift.monthsToLimit(), 0.5);
    assertEquals(0, chart(0.5, 0.81, 0.99, 1.2).drift().monthsToLimit(), 1e-9);
  }

  /** By hand: slope 0.1 exactly, residuals 0.03 (1, -1, -1, 1), s² = 0.0018, Sxx = 5, t(2). */
  @Test
  void shouldStateTheUncertaintyOfADrift() {
    ControlDrift drift = chart(0.03, 0.07, 0.17, 0.33).drift();
    assertEquals(0.1, drift.sharePerMonth(), 1e-9);
    assertEquals(
        Coverage.factor(2, Coverage.PROBABILITY) * Math.sqrt(0.0018 / 5),
        drift.expandedPerMonth(),
        1e-9);
  }

  @Test
  void shouldSeeNoDriftWithoutTime() {
    assertNull(chart(0.1, 0.2, 0.3).drift());
    List<CalibrationCheck> atOnce =
        List.of(check(1, 0, 1), check(1, 0.1, 1), check(1, 0.2, 1), check(1, 0.3, 1));
    assertNull(ControlChart.of(atOnce).drift());
  }

  @Test
  void shouldBeginANewRunWithANewCalibration() {
    List<CalibrationCheck> checks = new ArrayList<>();
    for (int month = 0; month < 30; month++) {
      checks.add(check(month, 0.1, month < 20 ? 1 : 4));
    }
    ControlChart chart = ControlChart.of(checks);
    assertEquals(ControlChart.LENGTH, chart.checks().size());
    assertEquals(10, chart.run().size());
    assertEquals(checks.get(29), chart.checks().get(23));
  }

  @Test
  void shouldStandEmptyBeforeTheFirstCheck() {
    ControlChart chart = ControlChart.of(List.of());
    assertEquals(List.of(), chart.run());
    assertEquals(List.of(), chart.brokenRules());
    assertNull(chart.drift());
  }

  @Test
  void shouldLeaveACheckThatHadNoLimitOutOfTheRun() {
    CalibrationCheck limitless =
        new CalibrationCheck(Channel.CURRENT, 1, 0, "K2", "m", 100, 101, 0.1, 9, 0);
    assertEquals(List.of(), ControlChart.of(List.of(limitless)).run());
  }
}
