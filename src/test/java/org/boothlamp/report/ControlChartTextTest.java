package org.boothlamp.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.boothlamp.calibration.ControlChart;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ControlChartTextTest {

  @ParameterizedTest
  @CsvSource({
    "0,     '  |       o       |'",
    "0.5,   '  |       :   o   |'",
    "-1,    '  o       :       |'",
    "1.001, '  |       :       |X'",
    "-1.2,  'X |       :       |'",
    "40,    '  |       :       | X'",
    "NaN,   '  |       :       |'"
  })
  void shouldShowWhereACheckLies(double share, String expected) {
    assertEquals(expected, ControlChartText.scale(share));
  }

  @Test
  void shouldTellTheRunOfTheChecks() {
    String text =
        ControlChartText.render(
            ControlChart.of(CalibrationSamples.checks()),
            CalibrationSamples.ZONE,
            80,
            Colour.PLAIN);
    assertEquals(3, text.lines().filter(line -> line.contains("FAIL")).count(), text);
    assertTrue(text.contains("2026-11-06"), text);
    assertTrue(text.contains("more than 3 standard deviations"), text);
    assertTrue(text.contains("the limit is reached in about\n1 month."), text);
    assertTrue(text.lines().allMatch(line -> line.length() <= 80), text);
  }

  @Test
  void shouldSayHowManyChecksAreMissingForLimits() {
    String text =
        ControlChartText.render(
            ControlChart.of(CalibrationSamples.checks().subList(0, 3)),
            CalibrationSamples.ZONE,
            80,
            Colour.PLAIN);
    assertTrue(text.contains("Control limits need 8 checks"), text);
    assertTrue(text.contains("there are 3."), text);
  }

  @Test
  void shouldSayThatThereIsNone() {
    assertEquals(
        "No check was made yet.\n",
        ControlChartText.render(
            ControlChart.of(List.of()), CalibrationSamples.ZONE, 80, Colour.PLAIN));
  }
}
