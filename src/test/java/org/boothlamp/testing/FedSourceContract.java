package org.boothlamp.testing;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;

/** What a source keeps whose pairs the test knows beforehand. */
public abstract class FedSourceContract extends SampleSourceContract {

  /** The pairs that the source of {@link #open} delivers. */
  protected abstract PairStream sent();

  @Test
  void shouldDeliverThePairsThatWereSent() throws Exception {
    for (int i = 0; i < READS / 4; i++) {
      readPairs();
      for (int pair = 0; pair < block.count; pair++) {
        long index = block.firstIndex + pair;
        assertEquals(sent().current(index), block.current[pair], () -> "current of pair " + index);
        assertEquals(sent().voltage(index), block.voltage[pair], () -> "voltage of pair " + index);
      }
    }
  }

  @Test
  void shouldLoseNoPairOnAFaultlessWay() throws Exception {
    long pairs = 0;
    for (int i = 0; i < READS / 4; i++) {
      readPairs();
      assertEquals(pairs, block.firstIndex);
      pairs += block.count;
    }
    assertEquals(0, source().counters().lostPairs);
    assertEquals(0, source().counters().badFrames);
    assertEquals(0, source().counters().reconnects);
  }
}
