package org.boothlamp.signal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.Random;
import org.boothlamp.testing.PairScript;
import org.junit.jupiter.api.Test;

class TrailingAverageTest {

  private static final int SLOTS = 100;

  @Test
  void shouldHoldExactlyTheLastSlotsAfterAMillion() {
    PairSums[] kinds = randomSlots();
    TrailingAverage average = new TrailingAverage(SLOTS);
    Random random = new Random(11);
    int[] last = new int[SLOTS];
    for (int k = 0; k < 1_000_000; k++) {
      last[k % SLOTS] = random.nextInt(kinds.length);
      average.add(kinds[last[k % SLOTS]]);
    }
    PairSums expected = new PairSums();
    for (int kind : last) {
      expected.add(kinds[kind]);
    }
    assertSameSums(expected, average.sums());
  }

  private static PairSums[] randomSlots() {
    Random random = new Random(3);
    PairScript script = PairScript.at(5_000);
    script.wave(t -> 1_500 * random.nextGaussian() / 4, t -> 40 * random.nextGaussian(), 0.5);
    return script.slots().toArray(new PairSums[0]);
  }

  private static void assertSameSums(PairSums expected, PairSums actual) {
    assertEquals(expected.pairs, actual.pairs);
    assertEquals(expected.current, actual.current);
    assertEquals(expected.voltage, actual.voltage);
    assertEquals(expected.currentSquared, actual.currentSquared);
    assertEquals(expected.voltageSquared, actual.voltageSquared);
    assertEquals(expected.product, actual.product);
    assertEquals(expected.currentSigns, actual.currentSigns);
    assertEquals(expected.currentSigned, actual.currentSigned);
    assertEquals(expected.voltageSigns, actual.voltageSigns);
    assertEquals(expected.voltageSigned, actual.voltageSigned);
    assertEquals(expected.shortCircuits, actual.shortCircuits);
  }

  @Test
  void shouldAverageWhatThereIsUntilItIsFull() {
    TrailingAverage average = new TrailingAverage(3);
    for (int amps : new int[] {10, 20}) {
      average.add(PairScript.at(1_000).arc(amps, 20, 0.01).total());
    }
    assertEquals(2, average.slots());
    assertEquals(15, average.sums().meanAmps(PairScript.SCALE), 0);
  }

  @Test
  void shouldForgetTheOldestWhenFull() {
    TrailingAverage average = new TrailingAverage(2);
    for (int amps : new int[] {500, 10, 20}) {
      average.add(PairScript.at(1_000).arc(amps, 20, 0.01).total());
    }
    assertEquals(2, average.slots());
    assertEquals(15, average.sums().meanAmps(PairScript.SCALE), 0);
  }

  @Test
  void shouldBeEmptyAfterClear() {
    TrailingAverage average = new TrailingAverage(2);
    average.add(PairScript.at(1_000).arc(500, 20, 0.01).total());
    average.clear();
    assertEquals(0, average.slots());
    assertEquals(0, average.sums().pairs());
  }

  @Test
  void shouldRefuseALengthOfNothing() {
    assertThrows(IllegalArgumentException.class, () -> new TrailingAverage(0));
  }
}
