package org.boothlamp.calibration;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** How an uncertainty is rounded and printed. */
class MeasuredValueTest {

  @ParameterizedTest
  @CsvSource({
    "1.234, 1.2",
    "1.25, 1.3",
    "0.0996, 0.10",
    "0.5, 0.50",
    "3, 3.0",
    "9.96, 10",
    "99.6, 100",
    "123.4, 120",
    "0.000012345, 0.000012",
    "0, 0",
    "NaN, ?",
    "Infinity, ?"
  })
  void shouldGiveAnUncertaintyTwoDigits(double uncertainty, String printed) {
    assertEquals(printed, MeasuredValue.uncertainty(uncertainty));
  }

  @ParameterizedTest
  @CsvSource({
    "104.3456, 1.234, 104.3",
    "104.3456, 0.0996, 104.35",
    "-0.04, 1.2, 0.0",
    "12345, 234, 12350",
    "7, 0.5, 7.00",
    "7.25, 0, 7.25",
    "0, 0, 0",
    "7.25, NaN, 7.25",
    "NaN, 1, ?"
  })
  void shouldGiveAValueTheDecimalsOfItsUncertainty(double value, double u, String printed) {
    assertEquals(printed, MeasuredValue.value(value, u));
  }

  @Test
  void shouldStateAValueWithItsUncertainty() {
    assertEquals(
        "104.3 A ± 1.2 A (k = 2.05)", MeasuredValue.statement(104.3456, 1.234, 2.0518, "A"));
  }

  @ParameterizedTest
  @CsvSource({"0, 0", "320.0, 320", "1040.04, 1040", "123456, 123500", "0.39999, 0.4", "NaN, ?"})
  void shouldShortenAnyFigureToFourDigits(double value, String printed) {
    assertEquals(printed, MeasuredValue.figure(value));
  }
}
