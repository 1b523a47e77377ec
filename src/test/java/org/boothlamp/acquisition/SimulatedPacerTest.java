package org.boothlamp.acquisition;

import static org.boothlamp.acquisition.SimulatedTrials.assertBetween;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.function.LongConsumer;
import org.boothlamp.monitor.SampleBlock;
import org.boothlamp.monitor.SampleSource.Outcome;
import org.junit.jupiter.api.Test;

/** Real time, on a clock that only the tests and the waiting itself turn. */
class SimulatedPacerTest {

  private static final long MILLI = 1_000_000;

  private final SampleBlock block = new SampleBlock();
  private long nowNanos = 77;
  private long waitedNanos;

  private SimulatedSource source(double speed, LongConsumer waitNanos) {
    SimulatedSensor sensor = SimulatedTrials.SENSOR;
    SimulatedPlay play =
        new SimulatedPlay(
            SimulatedTrials.steadyRun(SimulatedProcess.STICK, 1, 10),
            sensor,
            SimulatedRunListener.NONE,
            SimulatedPlay.LONGEST_STEP_SECONDS);
    return new SimulatedSource(play, sensor, speed, () -> nowNanos, waitNanos);
  }

  private void sleep(long nanos) {
    waitedNanos += nanos;
    nowNanos += nanos;
  }

  @Test
  void shouldBringASlotOfPairsEveryTenMilliseconds() {
    SimulatedSource source = source(1, this::sleep);
    for (int k = 1; k <= 100; k++) {
      assertEquals(Outcome.PAIRS, source.read(block));
      assertEquals(50, block.count);
      assertEquals(nowNanos, block.monotonicNanos);
    }
    assertBetween(1_000 * MILLI - 100, 1_000 * MILLI + 1_000, waitedNanos);
  }

  @Test
  void shouldBringNothingWhenTheWaitWasCutShort() {
    SimulatedSource source = source(1, nanos -> {});
    assertEquals(Outcome.NOTHING, source.read(block));
    assertEquals(0, block.count);
    assertEquals(nowNanos, block.monotonicNanos);
    nowNanos += MILLI;
    assertEquals(Outcome.PAIRS, source.read(block));
    assertEquals(5, block.count);
  }

  @Test
  void shouldCatchUpInFullBlocksWithoutWaiting() {
    SimulatedSource source = source(1, this::sleep);
    source.read(block);
    nowNanos += 1_000 * MILLI;
    waitedNanos = 0;
    int caughtUp = 0;
    while (caughtUp < 5_000) {
      source.read(block);
      caughtUp += block.count;
    }
    assertEquals(5_000, caughtUp);
    assertEquals(0, waitedNanos);
  }

  @Test
  void shouldRunAtAMultipleOfRealTimeAndCountTimeFromPairs() {
    SimulatedSource source = source(4, this::sleep);
    long pairs = 0;
    for (int k = 0; k < 100; k++) {
      source.read(block);
      pairs += block.count;
      assertEquals(pairs * 200_000, block.monotonicNanos);
    }
    assertEquals(5_000, pairs);
    assertBetween(250 * MILLI - 100, 250 * MILLI + 1_000, waitedNanos);
  }

  @Test
  void shouldNeverWaitLongerThanASourceMay() {
    SimulatedSource source = source(0.01, this::sleep);
    source.read(block);
    assertEquals(50 * MILLI, waitedNanos);
  }

  @Test
  void shouldNotOverflowAfterMonths() {
    SimulatedPacer pacer = new SimulatedPacer(5_000, 0, () -> 0, nanos -> {});
    long year = 365L * 86_400;
    assertEquals(year * 1_000_000_000 + 200_000, pacer.nanosAfter(year * 5_000 + 1));
  }
}
