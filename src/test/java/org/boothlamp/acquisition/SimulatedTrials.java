package org.boothlamp.acquisition;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.function.LongConsumer;
import org.boothlamp.monitor.NanoClock;
import org.boothlamp.monitor.SampleBlock;
import org.boothlamp.monitor.SampleSource;
import org.boothlamp.signal.ChannelScale;
import org.boothlamp.signal.PairScale;
import org.junit.jupiter.api.function.Executable;

/** What the tests of the simulated booth share. */
final class SimulatedTrials {

  static final PairScale SCALE =
      new PairScale(new ChannelScale(600.0 / 32768, 0), new ChannelScale(100.0 / 32768, 0));
  static final SimulatedSensor SENSOR = SimulatedSensor.of(SCALE);

  private static final NanoClock NO_CLOCK = () -> 0;
  private static final LongConsumer NO_WAIT = nanos -> {};

  private SimulatedTrials() {}

  static SimulatedSource unhindered(SimulatedBooth booth) {
    return SimulatedSource.of(booth, SENSOR, SimulatedRunListener.NONE);
  }

  static SimulatedSource inSteps(SimulatedBooth booth, double longestStepSeconds) {
    SimulatedPlay play =
        new SimulatedPlay(booth, SENSOR, SimulatedRunListener.NONE, longestStepSeconds);
    return new SimulatedSource(play, SENSOR, 0, NO_CLOCK, NO_WAIT);
  }

  static SimulatedBooth steadyRun(SimulatedProcess process, double length, double arcSeconds) {
    return SimulatedBooth.repeated(
        process, SimulatedTrainee.steady(length), 1, arcSeconds, 20_240_607);
  }

  /** Plays to the end and gives the only stretch of current. */
  static SimulatedBurn onlyBurn(SimulatedSource source) {
    drain(source);
    List<SimulatedBurn> burns = source.truth().burns();
    if (burns.size() != 1) {
      throw new AssertionError("expected one stretch of current: " + burns);
    }
    return burns.get(0);
  }

  static SimulatedBurn steadyBurn(SimulatedProcess process, double length, double arcSeconds) {
    return onlyBurn(unhindered(steadyRun(process, length, arcSeconds)));
  }

  /** Reads to the end; answers the number of pairs. */
  static long drain(SampleSource source) {
    SampleBlock block = new SampleBlock();
    long pairs = 0;
    while (source.read(block) != SampleSource.Outcome.END) {
      pairs += block.count;
    }
    return pairs;
  }

  static void assertBetween(double low, double high, double actual) {
    assertTrue(
        actual >= low && actual <= high, () -> actual + " is not between " + low + " and " + high);
  }

  static void assertWithinPercent(double expected, double actual, double percent) {
    assertEquals(expected, actual, Math.abs(expected) * percent / 100);
  }

  static void assertRising(double low, double middle, double high) {
    assertTrue(low < middle && middle < high, () -> low + ", " + middle + ", " + high);
  }

  /** The message must name the rule or the value in each of these words. */
  static void assertRefused(Executable attempt, String... words) {
    String message = assertThrows(IllegalArgumentException.class, attempt).getMessage();
    for (String word : words) {
      assertTrue(message.contains(word), message);
    }
  }
}
