package org.boothlamp.calibration;

import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** References that cannot be what they are meant to be. */
class ReferenceDoubtTest {

  private static String question(Channel channel, double reference, double nominal) {
    return ReferenceDoubt.question(
        channel, reference, nominal, channel == Channel.CURRENT ? 500 : 50);
  }

  @ParameterizedTest
  @CsvSource({"0, 3", "0, -9", "100, 107", "-100, -107", "500, 523", "4.2, 0.1", "250, 290"})
  void shouldNotQuestionWhatASensorMayBeOff(double reference, double nominal) {
    assertNull(question(Channel.CURRENT, reference, nominal));
  }

  @ParameterizedTest
  @CsvSource({
    "VOLTAGE, 24300, 24.1, m",
    "VOLTAGE, 0.0243, 24.1, k",
    "CURRENT, 104300, 107, m",
    "CURRENT, 0.1043, 107, k",
    "VOLTAGE, -1900, -2, m"
  })
  void shouldNameTheUnitThatWasMeant(
      Channel channel, double reference, double nominal, String prefix) {
    String question = question(channel, reference, nominal);
    assertTrue(question.contains("is it in " + prefix + channel.unit() + "?"), question);
    assertTrue(question.contains(MeasuredValue.figure(reference) + " "), question);
    assertTrue(question.contains(MeasuredValue.figure(nominal) + " "), question);
  }

  @Test
  void shouldQuestionTheVoltageOfAShunt() {
    String question = question(Channel.CURRENT, 30, 253);
    assertTrue(question.contains("shunt"), question);
  }

  @Test
  void shouldQuestionTheOtherSign() {
    assertTrue(question(Channel.VOLTAGE, -24, 24).contains("the other sign"));
  }

  @Test
  void shouldQuestionWhatIsMerelyFarOff() {
    assertTrue(question(Channel.VOLTAGE, 48, 24).contains("too far apart"));
  }
}
