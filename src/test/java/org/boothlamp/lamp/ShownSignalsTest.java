package org.boothlamp.lamp;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.boothlamp.judging.Signal;
import org.junit.jupiter.api.Test;

class ShownSignalsTest {

  private final ShownSignals shown = new ShownSignals();

  @Test
  void shouldBeDarkBeforeTheFirst() {
    assertFalse(shown.next());
    assertEquals(Signal.DARK, shown.signal());
  }

  @Test
  void shouldGiveEveryPairInOrder() {
    for (int k = 0; k < 1_000; k++) {
      shown.put(Signal.ofCode(k % 7), k);
      shown.put(Signal.ofCode((k + 1) % 7), -k);
      assertNext(Signal.ofCode(k % 7), k);
      assertNext(Signal.ofCode((k + 1) % 7), -k);
      assertFalse(shown.next());
    }
    assertEquals(0, shown.skipped());
  }

  private void assertNext(Signal signal, long nanos) {
    assertTrue(shown.next());
    assertEquals(signal, shown.signal());
    assertEquals(nanos, shown.samplesNanos());
  }

  @Test
  void shouldKeepTheNewestAndCountTheRestWhenTheReaderIsHeldUp() {
    int put = 10_000;
    for (int k = 0; k < put; k++) {
      shown.put(Signal.GREEN, k);
    }
    int kept = ShownSignals.CAPACITY - 1;
    for (int k = put - kept; k < put; k++) {
      assertNext(Signal.GREEN, k);
    }
    assertFalse(shown.next());
    assertEquals(put - kept, shown.skipped());
  }
}
