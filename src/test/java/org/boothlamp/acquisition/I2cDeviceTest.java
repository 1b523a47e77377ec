package org.boothlamp.acquisition;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class I2cDeviceTest {

  /**
   * Fields of the configuration register: Texas Instruments SBAS444D. Computed from them: single
   * shot, input against ground, comparator off.
   */
  @ParameterizedTest
  @CsvSource({
    "0, 4.096, 860, C3E3",
    "1, 4.096, 860, D3E3",
    "3, 6.144, 8, F103",
    "2, 0.256, 128, EB83",
    "0, 2.048, 475, C5C3",
  })
  void shouldSetTheAds1115AsItsDataSheetSays(int channel, double volts, int rate, String word) {
    assertEquals(Integer.parseInt(word, 16), I2cDevice.ADS1115.config(channel, volts, rate));
  }

  /** SBAS473E; the codes of the rates as in a public library's header. */
  @ParameterizedTest
  @CsvSource({"0, 4.096, 3300, C3C3", "1, 2.048, 1600, D583", "1, 1.024, 128, D703"})
  void shouldSetTheAds1015AsItsDataSheetSays(int channel, double volts, int rate, String word) {
    assertEquals(Integer.parseInt(word, 16), I2cDevice.ADS1015.config(channel, volts, rate));
  }

  /** SBAS444D, Table 3: LSB sizes of the ADS1115, µV. */
  @ParameterizedTest
  @CsvSource({
    "6.144, 187.5",
    "4.096, 125",
    "2.048, 62.5",
    "1.024, 31.25",
    "0.512, 15.625",
    "0.256, 7.8125",
  })
  void shouldKnowTheStepOfTheAds1115(double volts, double micros) {
    assertEquals(micros * 1e-6, I2cDevice.ADS1115.voltsPerCount(volts), 1e-15);
  }

  /** Full scale over 2048; SBAS473E, from memory: LSB sizes of the ADS1015, mV. */
  @ParameterizedTest
  @CsvSource({"6.144, 3", "4.096, 2", "2.048, 1", "1.024, 0.5", "0.512, 0.25", "0.256, 0.125"})
  void shouldKnowTheStepOfTheAds1015(double volts, double millis) {
    assertEquals(millis * 1e-3, I2cDevice.ADS1015.voltsPerCount(volts), 1e-15);
  }

  /** The code table of the ADS1115, read on the sheet of the ADS1115L, which has the same. */
  @ParameterizedTest
  @CsvSource({"7FFF, 32767", "0001, 1", "0000, 0", "FFFF, -1", "8000, -32768"})
  void shouldReadCodesOfTheAds1115(String register, int count) {
    assertEquals(count, I2cDevice.ADS1115.count(Integer.parseInt(register, 16)));
  }

  /** The sheet of the ADS1015L: twelve bits at the upper end, two's complement. */
  @ParameterizedTest
  @CsvSource({"7FF0, 2047", "0010, 1", "0000, 0", "FFF0, -1", "8000, -2048"})
  void shouldReadCodesOfTheAds1015(String register, int count) {
    assertEquals(count, I2cDevice.ADS1015.count(Integer.parseInt(register, 16)));
  }

  @Test
  void shouldRefuseWhatItDoesNotHave() {
    String rate =
        assertThrows(
                IllegalArgumentException.class, () -> I2cDevice.ADS1115.config(0, 4.096, 3_300))
            .getMessage();
    assertEquals("ads1115 has no rate of 3300", rate);
    assertThrows(IllegalArgumentException.class, () -> I2cDevice.ADS1115.config(0, 5, 860));
    assertTrue(I2cDevice.ADS1015.rates().contains(3_300));
  }
}
