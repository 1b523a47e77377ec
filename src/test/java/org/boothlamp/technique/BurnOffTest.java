package org.boothlamp.technique;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * The relation itself, worked with exact arithmetic elsewhere. Its coefficients for 1.2 mm mild
 * steel, 0.3 mm/(A s) and 5e-5 1/(A^2 s), are from memory.
 */
class BurnOffTest {

  private static final BurnOff WIRE = BurnOff.ofSolidSteel(1.2);

  @ParameterizedTest
  @CsvSource({"150, 10, 56.25", "200, 15, 90", "200, 20, 100", "250, 20, 137.5"})
  void shouldFeedWhatMelts(double amps, double stickOutMm, double feedMmPerS) {
    assertEquals(feedMmPerS, WIRE.feedMmPerS(amps, amps, stickOutMm), 1e-9);
    assertEquals(amps, WIRE.amps(feedMmPerS, stickOutMm), 1e-6);
    assertEquals(stickOutMm, WIRE.stickOutMm(feedMmPerS, amps, amps, 0).value(), 1e-6);
  }

  @ParameterizedTest
  @CsvSource({"10, 238.5", "12, 228.7", "15, 216.3", "18, 206.0", "20, 200.0", "25, 187.2"})
  void shouldNeedFewerAmpsWithALongerStickOut(double stickOutMm, double amps) {
    assertEquals(amps, WIRE.amps(100, stickOutMm), 0.05);
    assertEquals(stickOutMm, WIRE.stickOutMm(100, amps, amps, 0).value(), 0.03);
  }

  /**
   * Control literature for 1.0 mm wire: C1 = 2.8855e-10 m3/(A s), C2 = 5.22e-10 m3/(ohm A2 s),
   * 0.2821 ohm/m (from memory), gives 11.16 m/min at 200 A and 15 mm: the table must lie within
   * twice the uncertainty it states.
   */
  @Test
  void shouldAgreeWithTheOtherSetOfCoefficientsWithinItsUncertainty() {
    BurnOff wire = BurnOff.ofSolidSteel(1.0);
    double table = wire.feedMmPerS(200, 200, 15);
    double uncertainty =
        Math.hypot(200 * wire.alphaUncertainty(), 15 * 200 * 200 * wire.betaUncertainty());
    assertEquals(11_160 / 60.0, table, 2.5 * uncertainty);
  }

  @Test
  void shouldSayNothingOutsideItsValidity() {
    assertFalse(WIRE.stickOutMm(100, 400, 400, 1).isKnown());
    assertFalse(WIRE.stickOutMm(20, 200, 200, 1).isKnown(), "the arc alone melts more");
    assertNull(BurnOff.ofSolidSteel(2.4));
    assertNull(BurnOff.ofSolidSteel(Double.NaN));
  }

  /** Each input moved by its own uncertainty, by hand: 200 A, 20 mm, 100 mm/s. */
  @Test
  void shouldCarryTheUncertaintyOfEveryInput() {
    BurnOff exact = new BurnOff("", 1.2, 0.3, 5e-5, 0.03, 5e-6, 50, 400, "");
    double ofAmps = (0.3 + 2 * 5e-5 * 20 * 200) * 2 / 2;
    double ofAlpha = 200 * 0.03 / 2;
    double ofBeta = 20 * 40_000 * 5e-6 / 2;
    double ofFeed = 0.02 * 100 / 2;
    double all = Math.sqrt(ofAmps * ofAmps + ofAlpha * ofAlpha + ofBeta * ofBeta + ofFeed * ofFeed);
    assertEquals(all, exact.stickOutMm(100, 200, 200, 2).uncertainty(), 1e-6);
  }

  @Test
  void shouldFindTheCoefficientsOfTwoRuns() {
    BurnOffRun near = new BurnOffRun(12, 0.3, 100, WIRE.amps(100, 12), WIRE.amps(100, 12), 1);
    BurnOffRun far = new BurnOffRun(20, 0.3, 100, WIRE.amps(100, 20), WIRE.amps(100, 20), 1);
    BurnOff found = BurnOffRun.solve("school's wire", 1.2, near, far);
    assertEquals(0.3, found.alphaMmPerAs(), 1e-6);
    assertEquals(5e-5, found.betaPerA2s(), 1e-10);
    assertTrue(found.alphaUncertainty() > 0 && found.betaUncertainty() > 0);
    assertEquals(
        16, found.stickOutMm(100, WIRE.amps(100, 16), WIRE.amps(100, 16), 1).value(), 1e-3);
  }

  @Test
  void shouldRefuseTwoRunsThatTellNothing() {
    BurnOffRun one = new BurnOffRun(15, 0.3, 100, 216, 216, 1);
    BurnOffRun near = new BurnOffRun(16, 0.3, 100, 213, 213, 1);
    BurnOffRun absurd = new BurnOffRun(25, 0.3, 100, 260, 260, 1);
    assertTrue(refusal(one, near).contains("must differ by a factor of 1.4"));
    assertTrue(refusal(one, absurd).contains("fewer amps at the same feed"));
  }

  private static String refusal(BurnOffRun one, BurnOffRun other) {
    return assertThrows(IllegalArgumentException.class, () -> BurnOffRun.solve("", 1.2, one, other))
        .getMessage();
  }
}
