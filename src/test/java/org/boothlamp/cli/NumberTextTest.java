package org.boothlamp.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Numbers as people type them. */
class NumberTextTest {

  @ParameterizedTest
  @CsvSource({"104.3, 104.3", "-3, -3", "+.5, 0.5", "1e2, 100", "' 7 ', 7", "1.250, 1.25"})
  void shouldReadWhatIsOneNumberOnly(String text, double value) {
    assertEquals(value, NumberText.of(text).value());
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "104,3 | 104.3",
        "-104,3 | -104.3",
        "1,250 | 1.250 or 1250",
        "1.250,5 | 1250.5",
        "1,250.5 | 1250.5",
        "1 250 | 1250",
        "1 250,5 | 1250.5",
        "1'250 | 1250",
        "1.250.000 | 1250000",
        "104.3 A | 104.3",
        "104.3A | 104.3",
        "24300 mV | 24.300",
        "0.1 kA | 100",
        "24,3 V | 24.3"
      })
  void shouldAskWhatIsMeant(String text, String meant) {
    NumberText number = NumberText.of(text);
    assertFalse(number.isNumber());
    assertEquals(meant, String.join(" or ", number.couldMean()));
  }

  @ParameterizedTest
  @ValueSource(
      strings = {"", "a lot", "1,25,0", "--3", "NaN", "Infinity", "0x10", "1.2.3,4,5", "A"})
  void shouldNotGuessAtAnythingElse(String text) {
    NumberText number = NumberText.of(text);
    assertFalse(number.isNumber());
    assertEquals(List.of(), number.couldMean());
    assertEquals(
        "that is no number; type it like 104.3",
        number
            .question()
            .replace("a number has a full stop and no comma or grouping", "that is no number"));
  }
}
