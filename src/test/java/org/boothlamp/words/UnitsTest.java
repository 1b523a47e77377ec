package org.boothlamp.words;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;

/** NIST Special Publication 811 (2008), appendix B.8: 1 in = 25.4 mm exactly. */
class UnitsTest {

  @Test
  void shouldTakeAnInchAsExactly25Point4Millimetres() {
    assertEquals(1, Units.INCH_POUND.length(25.4));
    assertEquals(25.4, Units.INCH_POUND.millimetres(1));
    assertEquals(148, Units.METRIC.length(148));
  }

  @Test
  void shouldSayTravelSpeedByTheMinute() {
    assertEquals(300, Units.METRIC.speed(5), 1e-12);
    assertEquals(10, Units.INCH_POUND.speed(254 / 60.0), 1e-12);
  }

  @Test
  void shouldSayMoreKilojoulesOfTheLongerInch() {
    assertEquals(1.5, Units.METRIC.heatInput(1.5));
    assertEquals(38.1, Units.INCH_POUND.heatInput(1.5), 1e-12);
  }
}
