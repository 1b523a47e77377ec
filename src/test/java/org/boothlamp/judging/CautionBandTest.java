package org.boothlamp.judging;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.boothlamp.procedure.Quantity;
import org.boothlamp.procedure.Window;
import org.boothlamp.signal.Polarity;
import org.boothlamp.testing.Plans;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class CautionBandTest {

  private static final Window AMPS = Plans.amps(95, 125);

  private static CautionBand band(Window window, ChannelUncertainties uncertainties) {
    return CautionBand.of(Plans.pass(window), window, uncertainties);
  }

  @ParameterizedTest
  @CsvSource({
    "94.999, RED",
    "95, AMBER",
    "97.999, AMBER",
    "98, GREEN",
    "110, GREEN",
    "122, GREEN",
    "122.001, AMBER",
    "125, AMBER",
    "125.001, RED",
    "0, RED",
    "NaN, RED"
  })
  void shouldPutEveryAverageInItsZone(double average, Level expected) {
    CautionBand band = band(AMPS, Plans.EXACT);
    assertEquals(expected, band.level(average));
    assertEquals(expected == Level.RED, band.isOutside(average));
  }

  @Test
  void shouldTakeTenPercentWhereTheSensorIsBetter() {
    assertEquals(3, band(AMPS, Plans.uncertain(2.9, 0)).band(), 1e-12);
  }

  /** JCGM 106:2012: a guard band as wide as the expanded uncertainty. */
  @Test
  void shouldTakeTheUncertaintyWhereItIsLarger() {
    CautionBand band = band(AMPS, Plans.uncertain(5, 0));
    assertEquals(5, band.band(), 0);
    assertEquals(Level.AMBER, band.level(99.9));
    assertEquals(Level.GREEN, band.level(100));
  }

  @Test
  void shouldTakeTheUncertaintyAtTheHighLimit() {
    ChannelUncertainties uncertainties =
        new ChannelUncertainties(
            new ExpandedUncertainty(1, 0.03), new ExpandedUncertainty(0, 0), true);
    assertEquals(1 + 0.03 * 125, band(AMPS, uncertainties).band(), 1e-12);
  }

  @Test
  void shouldGiveVoltsTheUncertaintyOfTheVoltageChannel() {
    assertEquals(1.5, band(Plans.volts(20, 26), Plans.uncertain(100, 1.5)).band(), 0);
  }

  @Test
  void shouldGiveShortCircuitsNoUncertainty() {
    Window shorts = new Window(Quantity.SHORTS_PER_S, 40, 60);
    assertEquals(2, band(shorts, Plans.uncertain(1_000, 1_000)).band(), 0);
  }

  /** GUM 5.1.2: U of a product, U_w² = (v·U_i)² + (i·U_v)². */
  @Test
  void shouldCombineBothChannelsForPower() {
    Window power = new Window(Quantity.POWER_W, 2_000, 3_000);
    ChannelUncertainties uncertainties = Plans.uncertain(2, 0.5);
    CautionBand withAmps = CautionBand.of(Plans.pass(AMPS, power), power, uncertainties);
    assertEquals(Math.hypot(2 * 24, 0.5 * 125), 78.8, 0.1);
    assertEquals(100, withAmps.band(), 1e-9, "10 % is larger");
    CautionBand wider = CautionBand.of(Plans.pass(AMPS, power), power, Plans.uncertain(6, 2));
    assertEquals(Math.hypot(6 * 24, 2 * 125), wider.band(), 1e-9);
    Window volts = Plans.volts(20, 25);
    CautionBand withVolts = CautionBand.of(Plans.pass(volts, power), power, Plans.uncertain(6, 2));
    assertEquals(Math.hypot(6 * 25, 2 * 120), withVolts.band(), 1e-9);
  }

  @Test
  void shouldRefuseAWindowThatLeavesNoGreen() {
    WindowTooNarrowException refused =
        assertThrows(WindowTooNarrowException.class, () -> band(AMPS, Plans.uncertain(15, 0)));
    assertEquals(
        "pass \"fill\": window amps 95 to 125 A is 30 wide, but the sensor is"
            + " uncertain by U = 15 at either limit and 2 U must be below the width",
        refused.getMessage());
    assertEquals(AMPS, refused.window());
  }

  @Test
  void shouldAcceptAWindowThatLeavesALittleGreen() {
    assertEquals(Level.GREEN, band(AMPS, Plans.uncertain(14.9, 0)).level(110));
  }

  @Test
  void shouldRefuseThePlanOfAPassThatLeavesNoGreen() {
    JudgingPlan good = Plans.of(Polarity.DC_PLUS, AMPS);
    WindowTooNarrowException refused =
        assertThrows(
            WindowTooNarrowException.class,
            () -> new JudgingPlan(good.procedure(), good.pass(), Plans.uncertain(20, 0)));
    assertTrue(refused.getMessage().contains("U = 20 at"), refused.getMessage());
  }

  @Test
  void shouldRefuseANegativeUncertainty() {
    assertThrows(IllegalArgumentException.class, () -> new ExpandedUncertainty(-1, 0));
    assertThrows(IllegalArgumentException.class, () -> new ExpandedUncertainty(0, Double.NaN));
  }
}
