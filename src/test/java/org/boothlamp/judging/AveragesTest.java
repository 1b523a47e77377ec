package org.boothlamp.judging;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.boothlamp.procedure.Quantity;
import org.boothlamp.signal.Polarity;
import org.boothlamp.testing.PairScript;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

class AveragesTest {

  private static Averages averages(PairScript script, Polarity asked) {
    Averages averages = new Averages(script.scale(), script.pairsPerSecond());
    averages.look(script.total(), asked);
    return averages;
  }

  @ParameterizedTest
  @EnumSource(names = {"DC_PLUS", "DC_MINUS"})
  void shouldGiveMeansOfDirectCurrent(Polarity asked) {
    int sign = asked == Polarity.DC_PLUS ? 1 : -1;
    PairScript ripple =
        PairScript.at(1_000).arc(sign * 100, sign * 20, 0.5).arc(sign * 200, sign * 30, 0.5);
    Averages averages = averages(ripple, asked);
    assertEquals(150, averages.of(Quantity.AMPS), 1e-9);
    assertEquals(25, averages.of(Quantity.VOLTS), 1e-9);
    assertEquals(4_000, averages.of(Quantity.POWER_W), 1e-9);
  }

  @Test
  void shouldGiveRmsOfAlternatingCurrent() {
    Averages averages = averages(PairScript.at(10_000).sine(200, 20, 50, 1), Polarity.AC);
    assertEquals(200 / Math.sqrt(2), averages.of(Quantity.AMPS), 0.01);
    assertEquals(20, averages.of(Quantity.VOLTS), 1e-9);
    assertEquals(20 * 200 * 2 / Math.PI, averages.of(Quantity.POWER_W), 1);
  }

  @Test
  void shouldCountShortCircuitsASecond() {
    PairScript script = PairScript.at(5_000);
    for (int k = 0; k < 20; k++) {
      script.arc(120, 22, 0.0164).arc(200, 3, 0.0036);
    }
    Averages averages = averages(script.arc(120, 22, 0.1), Polarity.DC_PLUS);
    assertEquals(20 / 0.5, averages.of(Quantity.SHORTS_PER_S), 1e-9);
    assertTrue(averages.isMeasured(Quantity.SHORTS_PER_S));
  }

  @Test
  void shouldNotMeasureShortCircuitsWithASlowSource() {
    Averages averages = averages(PairScript.at(1_000).arc(120, 22, 1), Polarity.DC_PLUS);
    assertFalse(averages.isMeasured(Quantity.SHORTS_PER_S));
    assertTrue(averages.isMeasured(Quantity.AMPS));
  }

  @Test
  void shouldNotMeasureWhatIsKnownOnlyAfterTheWeld() {
    Averages averages = averages(PairScript.at(5_000).arc(120, 22, 1), Polarity.DC_PLUS);
    assertFalse(averages.isMeasured(Quantity.ARC_S));
    assertFalse(averages.isMeasured(Quantity.HEAT_INPUT_KJ_PER_MM));
  }

  @Test
  void shouldGiveNoReadingWithoutPairs() {
    Averages averages = new Averages(PairScript.SCALE, 5_000);
    assertTrue(Double.isNaN(averages.of(Quantity.AMPS)));
    assertTrue(Double.isNaN(averages.of(Quantity.SHORTS_PER_S)));
  }
}
