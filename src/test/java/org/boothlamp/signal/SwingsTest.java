package org.boothlamp.signal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.boothlamp.testing.PairScript;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Pulses and alternating currents that are written down, and so known. */
class SwingsTest {

  private static Swings swings(int rate, PairScript script) {
    Swings swings = new Swings();
    script.sendTo(slot -> swings.accept(slot, PairScript.SCALE));
    return swings;
  }

  private static double pulse(double t, double hertz, double share, double base, double peak) {
    double cycles = t * hertz;
    return cycles - Math.floor(cycles) < share ? peak : base;
  }

  @ParameterizedTest
  @CsvSource({"5000, 100, 0.3", "5000, 37, 0.5", "10000, 250, 0.25", "2000, 20, 0.4"})
  void shouldMeasureAPulse(int rate, double hertz, double share) {
    PairScript script = PairScript.at(rate).wave(t -> pulse(t, hertz, share, 60, 300), t -> 24, 3);
    Swings swings = swings(rate, script);
    assertEquals(hertz, swings.hertz(rate), 0.005 * hertz);
    assertEquals(share, swings.upperShare(), 0.01);
    assertEquals(300, swings.upperAmps(PairScript.SCALE), 3);
    assertEquals(60, swings.lowerAmps(PairScript.SCALE), 3);
  }

  @Test
  void shouldMeasureTheBalanceOfASquareWave() {
    PairScript script =
        PairScript.at(5_000)
            .wave(t -> pulse(t, 97, 0.3, -120, 100), t -> pulse(t, 97, 0.3, -14, 17), 3);
    Swings swings = swings(5_000, script);
    assertEquals(97, swings.hertz(5_000), 0.5);
    assertEquals(0.3, swings.upperShare(), 0.01);
    assertEquals(100, swings.upperAmps(PairScript.SCALE), 2);
    assertEquals(-120, swings.lowerAmps(PairScript.SCALE), 2);
  }

  @Test
  void shouldSeeNoPulseInASteadyArcNorInShortCircuitTransfer() {
    PairScript shorts = PairScript.at(5_000).arc(120, 18, 0.05);
    for (int k = 0; k < 50; k++) {
      shorts.arc(220, 3, 0.004).arc(120, 18, 0.016);
    }
    assertEquals(0, swings(5_000, shorts).swings());
    PairScript steady = PairScript.at(5_000).wave(t -> 120 + 15 * Math.sin(900 * t), t -> 22, 2);
    Swings swings = swings(5_000, steady);
    assertEquals(0, swings.swings());
    assertTrue(Double.isNaN(swings.hertz(5_000)));
  }
}
