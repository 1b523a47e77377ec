package org.boothlamp.acquisition;

import static org.boothlamp.acquisition.SimulatedTrials.assertBetween;
import static org.boothlamp.acquisition.SimulatedTrials.assertRefused;
import static org.boothlamp.acquisition.SimulatedTrials.assertWithinPercent;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.sun.management.ThreadMXBean;
import java.lang.management.ManagementFactory;
import java.util.ArrayList;
import java.util.List;
import org.boothlamp.monitor.SampleBlock;
import org.boothlamp.monitor.SampleSource;
import org.boothlamp.monitor.SampleSource.Outcome;
import org.boothlamp.signal.PairSums;
import org.boothlamp.signal.ShortCircuitRule;
import org.boothlamp.signal.Slot;
import org.boothlamp.signal.SlotBuilder;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

class SimulatedSourceTest {

  private final SampleBlock block = new SampleBlock();

  private static SimulatedBooth shift(long seed) {
    SimulatedTrainee beginner = SimulatedTrainee.beginner();
    return SimulatedBooth.stick(beginner, 2, 5, seed)
        .then(SimulatedBooth.shortArc(beginner, 2, 5, seed))
        .then(SimulatedBooth.tig(beginner, 2, 5, seed))
        .then(SimulatedBooth.repeated(SimulatedProcess.TIG_AC, beginner, 1, 5, seed));
  }

  private long fingerprint(SampleSource source) {
    long fingerprint = 0;
    while (source.read(block) != Outcome.END) {
      for (int k = 0; k < block.count; k++) {
        fingerprint = 31 * (31 * fingerprint + block.current[k]) + block.voltage[k];
      }
    }
    return fingerprint;
  }

  @Test
  void shouldRepeatEveryPairForTheSameSeed() {
    long first = fingerprint(SimulatedTrials.unhindered(shift(42)));
    long second = fingerprint(SimulatedTrials.unhindered(shift(42)));
    long other = fingerprint(SimulatedTrials.unhindered(shift(43)));
    assertEquals(first, second);
    assertNotEquals(first, other);
  }

  @Test
  void shouldNumberPairsWithoutAGapAndEndForGood() {
    SimulatedSource source = SimulatedTrials.unhindered(shift(1));
    long expected = 0;
    while (source.read(block) == Outcome.PAIRS) {
      assertEquals(expected, block.firstIndex);
      assertBetween(1, SampleBlock.CAPACITY, block.count);
      expected += block.count;
      assertEquals(expected * 200_000, block.monotonicNanos);
    }
    assertTrue(expected > 7 * 9 * 5_000);
    assertEquals(Outcome.END, source.read(block));
    assertEquals(0, block.count);
  }

  @Test
  void shouldEndWhenClosed() {
    SimulatedSource source = SimulatedTrials.unhindered(shift(1));
    source.read(block);
    source.close();
    source.close();
    assertEquals(Outcome.END, source.read(block));
  }

  @Test
  void shouldTellOfEachRunBeforeItsPauseAndAfterAllPairsOfTheOneBefore() {
    List<Integer> indexes = new ArrayList<>();
    List<SimulatedRun> runs = new ArrayList<>();
    List<Long> pairsBefore = new ArrayList<>();
    long[] delivered = {0};
    SimulatedBooth booth = shift(5);
    SimulatedSource source =
        SimulatedSource.of(
            booth,
            SimulatedTrials.SENSOR,
            (index, run) -> {
              indexes.add(index);
              runs.add(run);
              pairsBefore.add(delivered[0]);
            });
    assertEquals(-1, source.currentRun());
    while (source.read(block) == Outcome.PAIRS) {
      delivered[0] += block.count;
      assertEquals(indexes.get(indexes.size() - 1), source.currentRun());
    }
    assertEquals(List.of(0, 1, 2, 3, 4, 5, 6), indexes);
    assertEquals(booth.runs(), runs);
    for (SimulatedBurn burn : source.truth().burns()) {
      double begins = pairsBefore.get(burn.runIndex()) / 5_000.0;
      assertTrue(burn.startSeconds() > begins + 3.9);
      if (burn.runIndex() > 0 && burn.runIndex() < 6) {
        double next = pairsBefore.get(burn.runIndex() + 1) / 5_000.0;
        assertTrue(burn.endSeconds() < next - 0.5);
      }
    }
  }

  @Test
  void shouldCreateNoObjectsOnceItFlows() {
    List<SimulatedRun> runs = new ArrayList<>();
    for (SimulatedProcess process : SimulatedProcess.values()) {
      runs.add(SimulatedRun.of(1, process, SimulatedTrainee.beginner(), 1));
    }
    SimulatedSource source =
        SimulatedTrials.unhindered(SimulatedBooth.of(runs, 9).repeatedForever());
    ThreadMXBean threads = (ThreadMXBean) ManagementFactory.getThreadMXBean();
    readRuns(source, 4);
    threads.getCurrentThreadAllocatedBytes();
    long before = threads.getCurrentThreadAllocatedBytes();
    readRuns(source, 24);
    assertTrue(threads.getCurrentThreadAllocatedBytes() - before < 64);
  }

  private void readRuns(SimulatedSource source, int until) {
    while (source.currentRun() < until) {
      source.read(block);
    }
  }

  @Test
  void shouldGoOnCountingRunsWhenAnEndlessScriptBeginsAgain() {
    SimulatedRun run = SimulatedRun.of(1, SimulatedProcess.STICK, SimulatedTrainee.good(), 0.5);
    SimulatedSource source =
        SimulatedTrials.unhindered(SimulatedBooth.of(List.of(run), 9).repeatedForever());
    readRuns(source, 50);
    assertTrue(source.truth().finishedCount() >= 50);
    assertTrue(source.truth().burns().size() <= 32);
  }

  @ParameterizedTest
  @EnumSource
  void shouldGiveCountsThatAgreeWithTheTruth(SimulatedProcess process) {
    SimulatedSource source =
        SimulatedTrials.unhindered(SimulatedTrials.steadyRun(process, 0.95, 15));
    PairSums sums = new PairSums();
    SlotBuilder slots =
        new SlotBuilder(
            5_000, SimulatedTrials.SCALE, new ShortCircuitRule(8, 15), slot -> keep(slot, sums));
    while (source.read(block) == Outcome.PAIRS) {
      slots.accept(block.current, block.voltage, block.count, block.firstIndex);
    }
    SimulatedBurn burn = source.truth().burns().get(0);
    assertWithinPercent(burn.meanAmps(), sums.meanAbsoluteAmps(SimulatedTrials.SCALE), 0.5);
    assertWithinPercent(burn.meanVolts(), sums.meanAbsoluteVolts(SimulatedTrials.SCALE), 0.5);
    assertWithinPercent(burn.rmsAmps(), sums.rmsAmps(SimulatedTrials.SCALE), 0.5);
    assertWithinPercent(burn.meanWatts(), sums.meanWatts(SimulatedTrials.SCALE), 0.5);
    assertEquals(
        burn.shortCircuits(), (double) sums.shortCircuits(), 1 + 0.03 * burn.shortCircuits());
  }

  private static void keep(Slot slot, PairSums sums) {
    if (slot.sums().meanAbsoluteAmps(SimulatedTrials.SCALE) >= 15) {
      sums.add(slot.sums());
    }
  }

  @ParameterizedTest
  @CsvSource({"STICK, 1", "SHORT_ARC, 1", "TIG, -1"})
  void shouldCarryTheSignOfThePolarityOnBothChannels(SimulatedProcess process, int sign) {
    PairSums sums = sumsOfRun(process, SimulatedTrials.SENSOR.withoutNoise());
    assertEquals(sign, Math.signum(sums.meanAmps(SimulatedTrials.SCALE)));
    assertEquals(sign, Math.signum(sums.meanVolts(SimulatedTrials.SCALE)));
  }

  @Test
  void shouldSwingBothWaysOnAlternatingCurrent() {
    PairSums sums = sumsOfRun(SimulatedProcess.TIG_AC, SimulatedTrials.SENSOR);
    assertTrue(SimulatedTrials.SCALE.current().toUnits(sums.lowestCurrentCount()) < -80);
    assertTrue(SimulatedTrials.SCALE.current().toUnits(sums.highestCurrentCount()) > 80);
  }

  private PairSums sumsOfRun(SimulatedProcess process, SimulatedSensor sensor) {
    SimulatedSource source =
        SimulatedSource.of(
            SimulatedTrials.steadyRun(process, 1, 5), sensor, SimulatedRunListener.NONE);
    PairSums sums = new PairSums();
    SlotBuilder slots =
        new SlotBuilder(
            sensor.pairsPerSecond(),
            sensor.scale(),
            new ShortCircuitRule(8, 15),
            slot -> keep(slot, sums));
    while (source.read(block) == Outcome.PAIRS) {
      slots.accept(block.current, block.voltage, block.count, block.firstIndex);
    }
    return sums;
  }

  @Test
  void shouldClipAtTheEndsOfTheConverter() {
    SimulatedSensor small = SimulatedTrials.SENSOR.withRange(-4_000, 4_000);
    SimulatedSource source =
        SimulatedSource.of(
            SimulatedTrials.steadyRun(SimulatedProcess.STICK, 1, 2),
            small,
            SimulatedRunListener.NONE);
    assertEquals(4_000, source.format().highestCount());
    int highest = 0;
    while (source.read(block) == Outcome.PAIRS) {
      for (int k = 0; k < block.count; k++) {
        highest = Math.max(highest, Math.max(block.current[k], block.voltage[k]));
      }
    }
    assertEquals(4_000, highest);
  }

  @Test
  void shouldRoundTheEdgesBehindASlowClampAndKeepTheMean() {
    PairSums fast = sumsOfRun(SimulatedProcess.SHORT_ARC, SimulatedTrials.SENSOR);
    PairSums slow =
        sumsOfRun(SimulatedProcess.SHORT_ARC, SimulatedTrials.SENSOR.withClampBandwidth(50));
    assertTrue(slow.highestCurrentCount() < fast.highestCurrentCount() - 500);
    assertWithinPercent(
        fast.meanAmps(SimulatedTrials.SCALE), slow.meanAmps(SimulatedTrials.SCALE), 1);
  }

  @ParameterizedTest
  @CsvSource({"200", "1000", "7001", "100000"})
  void shouldKeepItsTimeAtAnyRate(int pairsPerSecond) {
    SimulatedSensor sensor = SimulatedTrials.SENSOR.atRate(pairsPerSecond);
    SimulatedSource source =
        SimulatedSource.of(
            SimulatedTrials.steadyRun(SimulatedProcess.STICK, 1, 1),
            sensor,
            SimulatedRunListener.NONE);
    long pairs = SimulatedTrials.drain(source);
    assertEquals(5.72, (double) pairs / pairsPerSecond, 0.1);
    assertEquals(4.04, source.truth().burns().get(0).startSeconds(), 0.02);
  }

  @Test
  void shouldSayWhatIsWrongWithItsSettings() {
    assertRefused(
        () -> new SimulatedSettings("laser", 5_000, 1, 1, 0.5, 10, 30), "short-arc", "laser");
    assertRefused(
        () -> new SimulatedSettings("stick", 100, 1, 1, 0.5, 10, 30), "pairsPerSecond=100");
    assertRefused(() -> new SimulatedSettings("stick", 5_000, 1, -1, 0.5, 10, 30), "speed=-1");
    assertRefused(() -> new SimulatedSettings("stick", 5_000, 1, 1, 0.5, 10, 0), "arcSeconds");
    assertRefused(() -> SimulatedTrials.SENSOR.withRange(5, 5), "lowestCount=5");
    assertRefused(() -> SimulatedBooth.of(List.of(), 1), "run");
  }
}
