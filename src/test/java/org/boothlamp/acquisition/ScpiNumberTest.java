package org.boothlamp.acquisition;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** What a meter may answer (IEEE 488.2, NR1 to NR3). */
class ScpiNumberTest {

  @ParameterizedTest
  @CsvSource({
    "104, 104",
    "-7, -7",
    "+24.310, 24.31",
    ".5, 0.5",
    "+1.0430000E+02, 104.3",
    "-2.5e-3, -0.0025"
  })
  void shouldReadWholePointedAndExponentForms(String answer, double value) {
    assertTrue(ScpiNumber.isNumber(answer));
    assertEquals(value, ScpiNumber.parse(answer));
  }

  @ParameterizedTest
  @ValueSource(
      strings = {"", " ", "104,3", "24.3 V", "1.0E2,2.0E2", "NaN", "0x10", "1e", "OVLD", "1.0d"})
  void shouldTakeNothingElseForANumber(String answer) {
    assertFalse(ScpiNumber.isNumber(answer));
  }

  @Test
  void shouldTellOverloadFromNotANumber() {
    assertTrue(ScpiNumber.isOverload(9.9e37));
    assertTrue(ScpiNumber.isOverload(-9.9e37));
    assertTrue(ScpiNumber.isNotANumber(9.91e37));
    assertFalse(ScpiNumber.isOverload(9.91e37));
    assertFalse(ScpiNumber.isOverload(1000));
  }

  @Test
  void shouldShowWhatCannotBePrinted() {
    assertEquals("\"12\\x003\\x22\\xFF\"", ScpiNumber.shown("12\u00003\"\u00FF"));
    assertTrue(ScpiNumber.shown("9".repeat(100)).length() < 65);
  }
}
