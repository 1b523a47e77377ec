package org.boothlamp.acquisition;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;

class SimulatedDroopTest {

  /** Distributor's glossary that reproduces a welding handbook's figure: 80 V open circuit. */
  @Test
  void shouldFollowThePublishedSteepCurve() {
    SimulatedDroop droop = new SimulatedDroop(80, SimulatedStickArc.DROOP_EXPONENT);
    assertEquals(115, ampsAt25Volts(droop), 0.2);
  }

  /** The same figure's second curve: 50 V open circuit. */
  @Test
  void shouldFollowThePublishedShallowCurve() {
    SimulatedDroop droop = new SimulatedDroop(50, 0.71);
    assertEquals(100, ampsAt25Volts(droop), 0.3);
  }

  private static double ampsAt25Volts(SimulatedDroop throughCurveAt20Volts) {
    return 123 * throughCurveAt20Volts.shareAt(25) / throughCurveAt20Volts.shareAt(20);
  }

  /** The straight line through (0 A, 80 V) and (123 A, 20 V), by hand: 112.75 A at 25 V. */
  @Test
  void shouldBeAStraightLineWithExponentOne() {
    assertEquals(112.75, ampsAt25Volts(new SimulatedDroop(80, 1)), 1e-9);
  }

  @Test
  void shouldGiveTheVoltsThatBelongToTheAmps() {
    SimulatedDroop droop = new SimulatedDroop(80, 1.33);
    for (double volts = 8; volts < 80; volts += 0.5) {
      assertEquals(volts, droop.volts(droop.shareAt(volts)), 0.02);
    }
  }

  @Test
  void shouldGiveOpenVoltsWithoutCurrentAndNoneBeyondShortCircuit() {
    SimulatedDroop droop = new SimulatedDroop(80, 1.33);
    assertEquals(80, droop.volts(-0.5));
    assertEquals(80, droop.volts(0));
    assertEquals(0, droop.volts(1));
    assertEquals(0, droop.volts(1.2));
  }

  @Test
  void shouldFallAtItsSlope() {
    SimulatedDroop droop = new SimulatedDroop(80, 1.33);
    double rise = droop.volts(0.5) - droop.volts(0.501);
    assertEquals(rise / 0.001, droop.slope(0.5), 0.1);
    assertEquals(0, droop.slope(-0.1));
    assertEquals(0, droop.slope(1.1));
  }
}
