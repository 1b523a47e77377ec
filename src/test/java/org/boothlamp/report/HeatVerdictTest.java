package org.boothlamp.report;

import static org.boothlamp.report.RunBuilder.run;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.util.List;
import org.boothlamp.calibration.CalibrationFinish;
import org.boothlamp.calibration.CalibrationHistory;
import org.boothlamp.calibration.CalibrationRecord;
import org.boothlamp.calibration.Channel;
import org.boothlamp.judging.ExpandedUncertainty;
import org.boothlamp.procedure.Quantity;
import org.boothlamp.procedure.Window;
import org.boothlamp.report.HeatVerdict.Place;
import org.boothlamp.signal.ChannelScale;
import org.boothlamp.testing.Calibrations;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class HeatVerdictTest {

  private static final LocalDate DAY = LocalDate.of(2026, 3, 2);

  /** U of 2 % of the amps and 1.5 % of the volts. */
  private static final CalibrationHistory HISTORY =
      new CalibrationHistory(
          List.of(calibration(1, Channel.CURRENT, 0.02), calibration(2, Channel.VOLTAGE, 0.015)));

  private static CalibrationRecord calibration(long number, Channel channel, double share) {
    ChannelScale scale = new ChannelScale(0.1, 0);
    CalibrationFinish finish =
        Calibrations.accepted(0, scale, new ExpandedUncertainty(0, share), DAY.plusYears(1));
    return Calibrations.record(number, Calibrations.head(channel, scale, DAY), finish, null);
  }

  /** A stick run of 24 V, 180 A and 60 s: 259.2 kJ, on 300 mm a heat input of 0.6912 kJ/mm. */
  private static RunBuilder welded(double low, double high) {
    return run()
        .pass("S-1", "1", "fill", new Window(Quantity.HEAT_INPUT_KJ_PER_MM, low, high))
        .length(60)
        .means(180, 24)
        .energy(24 * 180 * 60.0)
        .calibrations(1, 2)
        .bead(300, "");
  }

  private static HeatVerdict judged(RunBuilder run, RunFlag... flags) {
    return HeatVerdict.of(new RunSummary(run.build(), List.of(), List.of(flags)), HISTORY);
  }

  /** 0.6912 kJ/mm: a calculator's worked example, 24 V, 180 A, 300 mm/min and k = 0.8. */
  @ParameterizedTest
  @CsvSource({
    "0.5, 0.8, INSIDE",
    "0.8, 1.2, BELOW",
    "0.3, 0.6, ABOVE",
    "0.5, 0.70, TOO_NEAR",
    "0.5, 0.68, TOO_NEAR",
    "0.70, 0.9, TOO_NEAR"
  })
  void shouldHoldThePublishedHeatInputAgainstTheLimits(double low, double high, Place place) {
    HeatVerdict verdict = judged(welded(low, high));
    assertEquals(0.6912, verdict.heat().heatInputKilojoulesPerMillimetre(), 1e-12);
    assertEquals(place, verdict.place());
  }

  /**
   * Shares of independent factors add in squares (JCGM 100:2008 5.1.6, from memory): 2 %, 1.5 % and
   * 0.272 % of a bead of 300 mm are 2.5148 %.
   */
  @Test
  void shouldAddTheSharesOfAmpsVoltsAndLengthInSquares() {
    double length = 2 * 0.5 * Math.sqrt(2 / 3.0) / 300;
    double expected = 0.6912 * Math.sqrt(0.02 * 0.02 + 0.015 * 0.015 + length * length);
    assertEquals(expected, judged(welded(0.5, 0.8)).expandedKilojoulesPerMillimetre(), 1e-12);
    assertEquals(0.025148, expected / 0.6912, 1e-6);
  }

  @Test
  void shouldNotKnowUWithoutACalibrationThatCounts() {
    for (RunFlag flag :
        List.of(RunFlag.UNCALIBRATED, RunFlag.CALIBRATION_OVERDUE, RunFlag.CALIBRATION_WITHDRAWN)) {
      HeatVerdict verdict = judged(welded(0.5, 0.70), flag);
      assertTrue(Double.isNaN(verdict.expandedKilojoulesPerMillimetre()));
      assertEquals(Place.INSIDE, verdict.place());
    }
  }

  @Test
  void shouldNotJudgeWithoutLimitsOrWithoutAProcess() {
    assertEquals(Place.NOT_JUDGED, judged(run().bead(100, "")).place());
    assertEquals(Place.NOT_JUDGED, judged(run().noProcedure().bead(100, "")).place());
  }

  @Test
  void shouldSayNothingWithoutABead() {
    assertNull(judged(run()));
    assertNull(judged(run().length(0).bead(100, "")));
  }
}
