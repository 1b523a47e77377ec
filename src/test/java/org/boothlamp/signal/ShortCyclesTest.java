package org.boothlamp.signal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.boothlamp.testing.PairScript;
import org.junit.jupiter.api.Test;

/** Cycles of short-circuit transfer that are written down, and so known. */
class ShortCyclesTest {

  private static final int RATE = 5_000;

  private static ShortCycles cycles(PairScript script) {
    ShortCycles all = new ShortCycles();
    script.sendTo(slot -> all.add(slot.shortCycles()));
    return all;
  }

  /** Fifty a second: 4 ms shorted at 200 A, 16 ms of arc at 120 A. */
  private static PairScript regular() {
    PairScript script = PairScript.at(RATE).arc(120, 18, 0.05);
    for (int k = 0; k < 50; k++) {
      script.arc(200, 3, 0.004).arc(120, 18, 0.016);
    }
    return script;
  }

  @Test
  void shouldMeasureAClockwork() {
    ShortCycles cycles = cycles(regular());
    assertEquals(50, cycles.shorts());
    assertEquals(49, cycles.cycles());
    assertEquals(0.020, cycles.meanCycleSeconds(RATE), 1e-9);
    assertEquals(0, cycles.cycleDeviationSeconds(RATE), 1e-9);
    assertEquals(0.004, cycles.meanShortSeconds(RATE), 1e-9);
    assertEquals(0.2, cycles.shortedShare(), 1e-9);
    assertEquals(0, cycles.irregularity(), 1e-9);
    assertEquals(200, cycles.meanShortAmps(PairScript.SCALE), 0.2);
    assertEquals(200, cycles.meanPeakAmps(PairScript.SCALE), 0.2);
  }

  /** Arcs of 10 and 30 ms in turn: 20 ms on average, deviation 10 ms but for n - 1. */
  @Test
  void shouldMeasureTheSpreadOfUnevenCycles() {
    PairScript script = PairScript.at(RATE).arc(120, 18, 0.05);
    for (int k = 0; k < 51; k++) {
      script.arc(200, 3, 0.004).arc(120, 18, k % 2 == 0 ? 0.010 : 0.030);
    }
    ShortCycles cycles = cycles(script);
    assertEquals(50, cycles.cycles());
    assertEquals(0.024, cycles.meanCycleSeconds(RATE), 1e-9);
    assertEquals(0.010 * Math.sqrt(50.0 / 49), cycles.cycleDeviationSeconds(RATE), 1e-9);
    assertEquals(0.5 * Math.sqrt(50.0 / 49), cycles.irregularity(), 1e-9);
  }

  @Test
  void shouldFindTheHighestCurrentOfARisingShort() {
    PairScript script =
        PairScript.at(RATE)
            .arc(120, 18, 0.05)
            .wave(t -> 120 + 50_000 * t, t -> 3, 0.0032)
            .arc(120, 18, 0.05);
    ShortCycles cycles = cycles(script);
    assertEquals(270, cycles.highestPeakAmps(PairScript.SCALE), 0.2);
    assertEquals(195, cycles.meanShortAmps(PairScript.SCALE), 0.2);
  }

  @Test
  void shouldNotMakeACycleAcrossAGapOrALongArc() {
    ShortCycles cycles =
        cycles(
            PairScript.at(RATE)
                .arc(120, 18, 0.05)
                .arc(200, 3, 0.004)
                .arc(120, 18, 0.02)
                .gap(0.02)
                .arc(120, 18, 0.02)
                .arc(200, 3, 0.004)
                .arc(120, 18, 0.6)
                .arc(200, 3, 0.004)
                .arc(120, 18, 0.1));
    assertEquals(3, cycles.shorts());
    assertEquals(0, cycles.cycles());
    assertTrue(Double.isNaN(cycles.meanCycleSeconds(RATE)));
  }
}
