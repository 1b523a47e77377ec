package org.boothlamp.signal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;

import org.boothlamp.testing.PairScript;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

class PolarityTest {

  @Test
  void shouldTellTheSignOfADirectCurrent() {
    assertEquals(Polarity.DC_PLUS, of(PairScript.at(1_000).arc(100, 20, 1).total()));
    assertEquals(Polarity.DC_MINUS, of(PairScript.at(1_000).arc(-100, -20, 1).total()));
  }

  @Test
  void shouldCallASineAlternating() {
    assertEquals(Polarity.AC, of(PairScript.at(10_000).sine(100, 20, 60, 1).total()));
  }

  /** 75 % of the time on one side, as an AC machine set to clean less, is still alternating. */
  @Test
  void shouldCallAnUnevenSquareWaveAlternating() {
    PairScript script = PairScript.at(1_000);
    for (int k = 0; k < 50; k++) {
      script.arc(-100, -20, 0.015).arc(100, 20, 0.005);
    }
    assertEquals(Polarity.AC, of(script.total()));
  }

  /** Noise and ripple that cross zero now and then do not make a current alternating. */
  @Test
  void shouldCallADirectCurrentWithSpikesDirect() {
    PairScript script = PairScript.at(1_000);
    for (int k = 0; k < 50; k++) {
      script.arc(100, 20, 0.019).arc(-100, 20, 0.001);
    }
    assertEquals(Polarity.DC_PLUS, of(script.total()));
  }

  private static Polarity of(PairSums sums) {
    return Polarity.of(sums.meanAmps(PairScript.SCALE), sums.meanAbsoluteAmps(PairScript.SCALE));
  }

  @ParameterizedTest
  @EnumSource
  void shouldFindItsWordAgain(Polarity polarity) {
    assertEquals(polarity, Polarity.ofWord(polarity.word()));
  }

  @Test
  void shouldNotGuessAtAnUnknownWord() {
    assertNull(Polarity.ofWord("DC"));
  }
}
