package org.boothlamp.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.boothlamp.procedure.Process;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class HeatInputTest {

  private static final double MM_PER_INCH = 25.4;

  /**
   * Worked examples of arc energy per inch, V · A · 60 / travel speed, as three teaching pages give
   * them; the last one cuts 113.657 to 113.65.
   */
  @ParameterizedTest
  @CsvSource({
    "24, 120, 18, 120, 19.2",
    "29, 325, 25, 120, 45.24",
    "39, 425, 35, 240, 113.657",
  })
  void shouldGivePublishedArcEnergiesPerInch(
      double volts, double amps, double inches, double seconds, double kilojoulesPerInch) {
    HeatInput found =
        HeatInput.of(
            Process.MANUAL_METAL_ARC, volts * amps * seconds, seconds, inches * MM_PER_INCH);
    assertEquals(kilojoulesPerInch, found.arcEnergyKilojoulesPerMillimetre() * MM_PER_INCH, 0.0005);
    assertEquals(inches * MM_PER_INCH / seconds, found.travelMillimetresPerSecond(), 1e-12);
  }

  /** A teaching page's worked example: 20 V, 300 A, 2.5 mm/s are 2.4 kJ/mm. */
  @Test
  void shouldGiveThePublishedArcEnergyPerMillimetre() {
    HeatInput found = HeatInput.of(Process.MIG, 20 * 300 * 10.0, 10, 25);
    assertEquals(2.5, found.travelMillimetresPerSecond(), 1e-12);
    assertEquals(2.4, found.arcEnergyKilojoulesPerMillimetre(), 1e-12);
  }

  /** A calculator's worked example with k = 0.8: 24 V, 180 A, 300 mm/min are 0.691 kJ/mm. */
  @Test
  void shouldGiveThePublishedHeatInput() {
    HeatInput found = HeatInput.of(Process.MAG, 24 * 180 * 60.0, 60, 300);
    assertEquals(0.6912, found.heatInputKilojoulesPerMillimetre(), 1e-12);
  }

  /** EN 1011-1 Table 1 as TWI gives it; 114 and 142 from memory. */
  @ParameterizedTest
  @CsvSource({
    "111, 0.8",
    "114, 0.8",
    "121, 1.0",
    "131, 0.8",
    "135, 0.8",
    "136, 0.8",
    "138, 0.8",
    "141, 0.6",
    "142, 0.6",
    "15, 0.6"
  })
  void shouldTakeTheFactorOfTheProcess(String number, double factor) {
    assertEquals(factor, HeatInput.factor(Process.ofNumber(number)));
  }

  @Test
  void shouldKnowNoHeatInputWithoutAProcess() {
    HeatInput found = HeatInput.of(null, 1_000, 1, 10);
    assertEquals(0.1, found.arcEnergyKilojoulesPerMillimetre(), 1e-12);
    assertTrue(Double.isNaN(found.heatInputKilojoulesPerMillimetre()));
  }

  @Test
  void shouldRefuseABeadOfNoLength() {
    assertThrows(IllegalArgumentException.class, () -> HeatInput.of(null, 1, 1, 0));
    assertThrows(IllegalArgumentException.class, () -> HeatInput.of(null, 1, 0, 1));
  }
}
