package org.boothlamp.report;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import org.boothlamp.judging.Signal;
import org.junit.jupiter.api.Test;

class RunStripTest {

  private static RunStrip strip(double[] amps, Signal... signals) {
    return RunStrip.of(amps, amps, amps, amps, signals);
  }

  @Test
  void shouldKeepEveryPointOfAShortRunWithoutItsSign() {
    RunStrip strip = strip(new double[] {-100, -110, Double.NaN}, Signal.SETTLING);
    assertEquals(RunTrace.POINT_SECONDS, strip.pointSeconds());
    assertArrayEquals(new double[] {100, 110, Double.NaN}, strip.amps().mean());
  }

  @Test
  void shouldKeepMeanLowestAndHighestOfALongRun() {
    double[] amps = new double[RunStrip.MOST_POINTS * 4];
    for (int i = 0; i < amps.length; i++) {
      amps[i] = 100 + i % 4;
    }
    RunStrip strip = strip(amps);
    assertEquals(RunStrip.MOST_POINTS, strip.size());
    assertEquals(0.2, strip.pointSeconds(), 1e-12);
    assertEquals(101.5, strip.amps().mean()[7]);
    assertEquals(100, strip.amps().low()[7]);
    assertEquals(103, strip.amps().high()[7]);
  }

  @Test
  void shouldLeaveOutWhatWasNotMeasured() {
    double[] amps = new double[RunStrip.MOST_POINTS * 2];
    Arrays.fill(amps, 100);
    amps[0] = Double.NaN;
    amps[2] = Double.NaN;
    amps[3] = Double.NaN;
    RunStrip strip = strip(amps);
    assertEquals(100, strip.amps().mean()[0]);
    assertTrue(Double.isNaN(strip.amps().mean()[1]));
  }

  @Test
  void shouldJoinWhatTheLampShowed() {
    RunStrip strip = strip(new double[4], Signal.SETTLING, Signal.GREEN, Signal.GREEN, Signal.RED);
    assertEquals(
        List.of(
            new RunStrip.Shown(Signal.SETTLING, 0, 0.05),
            new RunStrip.Shown(Signal.GREEN, 0.05, 3 * 0.05),
            new RunStrip.Shown(Signal.RED, 3 * 0.05, 0.2)),
        strip.signals());
  }

  @Test
  void shouldFindWhereTheCurrentWasGoneButNotAtTheEdges() {
    double[] lowest = new double[40];
    Arrays.fill(lowest, 100);
    lowest[0] = 0;
    lowest[10] = 5;
    lowest[11] = 3;
    lowest[30] = 0;
    lowest[39] = 0;
    RunStrip strip = RunStrip.of(lowest, lowest, lowest, lowest, new Signal[] {Signal.GREEN});
    assertEquals(List.of(30.5 * 0.05, 10.5 * 0.05), strip.arcOutSeconds());
  }

  @Test
  void shouldHoldARunOfWhichNothingWasKept() {
    RunStrip strip = strip(new double[0]);
    assertEquals(0, strip.size());
    assertTrue(strip.signals().isEmpty());
  }
}
