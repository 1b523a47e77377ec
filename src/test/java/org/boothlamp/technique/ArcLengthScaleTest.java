package org.boothlamp.technique;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;

class ArcLengthScaleTest {

  @Test
  void shouldTurnVoltsIntoMillimetres() {
    ArcLengthScale scale = ArcLengthScale.of(2, 21, 5, 27, 0, 0);
    assertEquals(2, scale.voltsPerMm(), 1e-12);
    assertEquals(1.5, scale.changeMm(3, 0).value(), 1e-12);
    assertEquals(-0.5, scale.changeMm(-1, 0).value(), 1e-12);
  }

  /** 0.3 mm on either length, 0.1 V on either mean: by hand, to first order. */
  @Test
  void shouldCarryTheUncertaintyOfBothArcs() {
    ArcLengthScale scale = ArcLengthScale.of(2, 21, 5, 27, 0.3, 0.1);
    double expected = Math.sqrt(2 * 0.1 * 0.1 + 2 * 4 * 0.3 * 0.3) / 3;
    assertEquals(expected, scale.uncertainty(), 1e-12);
    assertEquals(Math.hypot(0.2, 1.5 * expected) / 2, scale.changeMm(3, 0.2).uncertainty(), 1e-12);
  }

  @Test
  void shouldRefuseArcsThatDoNotRise() {
    assertTrue(refusal(5, 21, 2, 27).contains("must be longer than the first"));
    assertTrue(refusal(2, 27, 5, 21).contains("must take more volts"));
  }

  private static String refusal(double mm, double volts, double otherMm, double otherVolts) {
    return assertThrows(
            IllegalArgumentException.class,
            () -> ArcLengthScale.of(mm, volts, otherMm, otherVolts, 0.1, 0.1))
        .getMessage();
  }
}
