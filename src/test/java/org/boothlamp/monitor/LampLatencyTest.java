package org.boothlamp.monitor;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Random;
import org.boothlamp.arc.ArcRule;
import org.boothlamp.judging.JudgingPlan;
import org.boothlamp.judging.JudgingRule;
import org.boothlamp.judging.Signal;
import org.boothlamp.signal.Polarity;
import org.boothlamp.testing.EntryCollector;
import org.boothlamp.testing.PairScript;
import org.boothlamp.testing.Plans;
import org.boothlamp.testing.ScriptedSource;
import org.boothlamp.testing.SignalRecorder;
import org.junit.jupiter.api.Test;

/** How long after the pair that moves the average out of its window the lamp shows it. */
class LampLatencyTest {

  private static final int RATE = 5_000;
  private static final long NANOS_PER_PAIR = 1_000_000_000L / RATE;
  private static final long LATEST_NANOS = 110_000_000L;
  private static final double HIGH_AMPS = 125;
  private static final JudgingPlan FILL = Plans.of(Polarity.DC_PLUS, Plans.amps(95, HIGH_AMPS));

  @Test
  void shouldTurnRedWithinElevenHundredthsOfThePairThatMovesTheAverageOut() {
    Random random = new Random(17);
    long latest = 0;
    for (int k = 0; k < 200; k++) {
      double idle = 0.5 + random.nextInt(RATE) / (double) RATE;
      double inside = 2 + random.nextInt(RATE) / (double) RATE;
      double outside = 130 + random.nextInt(100);
      int blockPairs = 1 + random.nextInt(50);
      latest = Math.max(latest, latency(idle, inside, outside, blockPairs));
    }
    assertTrue(latest <= LATEST_NANOS, "latest after " + latest / 1e6 + " ms");
    assertTrue(latest > 50_000_000L, "200 phases should meet a late one: " + latest / 1e6 + " ms");
  }

  private static long latency(double idle, double inside, double outside, int blockPairs) {
    PairScript script = PairScript.at(RATE).idle(idle).arc(110, 23, inside).arc(outside, 23, 1.5);
    ScriptedSource source = new ScriptedSource(RATE).pairs(script, blockPairs);
    SignalRecorder lamp = new SignalRecorder();
    Monitor monitor =
        new Monitor(
            source,
            lamp,
            new EntryCollector(),
            () -> 0,
            new PipelineSettings(PairScript.SCALE, ArcRule.STANDARD, JudgingRule.STANDARD),
            new Assignment("T-01", FILL));
    long pairsRead = 0;
    long total = script.parts().get(0).current().length;
    while (lamp.last() != Signal.RED && monitor.step()) {
      pairsRead = Math.min(total, pairsRead + blockPairs);
    }
    assertEquals(Signal.RED, lamp.last());
    return (pairsRead - pairsUntilOut(script.parts().get(0).current())) * NANOS_PER_PAIR;
  }

  /** Pairs up to and with the first whose mean of the last second is above the window. */
  private static long pairsUntilOut(short[] current) {
    double limit = HIGH_AMPS * RATE;
    double sum = 0;
    for (int k = 0; k < current.length; k++) {
      sum += current[k] / 16.0;
      sum -= k < RATE ? 0 : current[k - RATE] / 16.0;
      if (sum > limit) {
        return k + 1;
      }
    }
    throw new AssertionError("the average never leaves the window");
  }
}
