package org.boothlamp.acquisition;

import static org.boothlamp.acquisition.SimulatedTrials.assertBetween;
import static org.boothlamp.acquisition.SimulatedTrials.assertRefused;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.boothlamp.monitor.SampleBlock;
import org.boothlamp.monitor.SampleSource;
import org.boothlamp.signal.PairSums;
import org.boothlamp.signal.ShortCircuitRule;
import org.boothlamp.signal.Slot;
import org.boothlamp.signal.SlotBuilder;
import org.boothlamp.signal.TrailingAverage;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class SimulatedTraineeTest {

  @ParameterizedTest
  @CsvSource({
    "STICK, 95, 125, 20, 26",
    "SHORT_ARC, 132, 152, 15, 18",
    "TIG, 85, 115, 10, 14",
  })
  void shouldKeepAGoodWelderInsideAndABeginnerInsideAboutHalfTheTime(
      SimulatedProcess process,
      double lowAmps,
      double highAmps,
      double lowVolts,
      double highVolts) {
    Judge good = new Judge(lowAmps, highAmps, lowVolts, highVolts);
    good.watch(booth(process, SimulatedTrainee.good()));
    assertTrue(good.insideShare() > 0.85);
    Judge beginner = new Judge(lowAmps, highAmps, lowVolts, highVolts);
    beginner.watch(booth(process, SimulatedTrainee.beginner()));
    assertBetween(0.4, 0.7, beginner.insideShare());
  }

  private static SimulatedBooth booth(SimulatedProcess process, SimulatedTrainee trainee) {
    return SimulatedBooth.repeated(process, trainee, 16, 15, 11);
  }

  /** Averages over 1 s of slots with current, judged after the first second of an arc. */
  private static final class Judge {
    private static final int AVERAGE_SLOTS = 100;
    private static final int BRIDGE_SLOTS = 30;

    private final double lowAmps;
    private final double highAmps;
    private final double lowVolts;
    private final double highVolts;
    private final TrailingAverage average = new TrailingAverage(AVERAGE_SLOTS);
    private int slotsWithout;
    private long judged;
    private long inside;

    Judge(double lowAmps, double highAmps, double lowVolts, double highVolts) {
      this.lowAmps = lowAmps;
      this.highAmps = highAmps;
      this.lowVolts = lowVolts;
      this.highVolts = highVolts;
    }

    void watch(SimulatedBooth booth) {
      SimulatedSource source = SimulatedTrials.unhindered(booth);
      SlotBuilder slots =
          new SlotBuilder(
              SimulatedTrials.SENSOR.pairsPerSecond(),
              SimulatedTrials.SCALE,
              new ShortCircuitRule(8, 15),
              this::onSlot);
      SampleBlock block = new SampleBlock();
      while (source.read(block) != SampleSource.Outcome.END) {
        slots.accept(block.current, block.voltage, block.count, block.firstIndex);
      }
    }

    private void onSlot(Slot slot) {
      if (slot.sums().meanAbsoluteAmps(SimulatedTrials.SCALE) >= 15) {
        slotsWithout = 0;
        average.add(slot.sums());
        if (average.slots() == AVERAGE_SLOTS) {
          judge(average.sums());
        }
      } else if (++slotsWithout > BRIDGE_SLOTS) {
        average.clear();
      }
    }

    private void judge(PairSums sums) {
      double amps = sums.meanAbsoluteAmps(SimulatedTrials.SCALE);
      double volts = sums.meanAbsoluteVolts(SimulatedTrials.SCALE);
      judged++;
      if (amps >= lowAmps && amps <= highAmps && volts >= lowVolts && volts <= highVolts) {
        inside++;
      }
    }

    double insideShare() {
      return (double) inside / judged;
    }
  }

  @Test
  void shouldTouchBeforeEveryArcWhenEveryAttemptFails() {
    List<SimulatedBurn> burns = burns(SimulatedProcess.STICK, mistakes(1, 0, 0));
    assertEquals(5, burns.size());
    assertTrue(burns.subList(0, 4).stream().allMatch(SimulatedBurn::isTouch));
    assertFalse(burns.get(4).isTouch());
  }

  @Test
  void shouldHoldAStuckElectrodeOverHalfASecondAtShortCircuitVolts() {
    SimulatedBurn stuck = burns(SimulatedProcess.STICK, mistakes(0, 1, 0)).get(0);
    assertTrue(stuck.isTouch());
    assertBetween(0.5, 2.0, stuck.lengthSeconds());
    assertTrue(stuck.meanVolts() < 8);
  }

  @ParameterizedTest
  @CsvSource({"STICK", "SHORT_ARC", "TIG"})
  void shouldLoseTheArcForLessThanABridgeOrForLonger(SimulatedProcess process) {
    List<SimulatedBurn> burns = burns(process, mistakes(0, 0, 40));
    assertTrue(burns.size() > 3);
    assertTrue(burns.stream().mapToInt(SimulatedBurn::arcOuts).sum() > 3);
    double flowing = burns.stream().mapToDouble(SimulatedBurn::flowingSeconds).sum();
    assertBetween(29.0, 34.0, flowing);
  }

  @Test
  void shouldNeverStickATungstenElectrode() {
    List<SimulatedBurn> burns = burns(SimulatedProcess.TIG, mistakes(0, 1, 0));
    assertEquals(1, burns.size());
  }

  private static SimulatedTrainee mistakes(double touch, double stuck, double arcOutsPerMinute) {
    return new SimulatedTrainee(1, 0, 0, 1, 1, 0, 0, touch, stuck, arcOutsPerMinute);
  }

  private static List<SimulatedBurn> burns(SimulatedProcess process, SimulatedTrainee trainee) {
    SimulatedSource source =
        SimulatedTrials.unhindered(SimulatedBooth.repeated(process, trainee, 1, 30, 3));
    SimulatedTrials.drain(source);
    return source.truth().burns();
  }

  @ParameterizedTest
  @CsvSource({"0, beginner", "1, good"})
  void shouldReachBothEndsOfTheCourse(double skill, String which) {
    SimulatedTrainee expected =
        which.equals("good") ? SimulatedTrainee.good() : SimulatedTrainee.beginner();
    assertEquals(expected, SimulatedTrainee.ofSkill(skill));
  }

  @Test
  void shouldNameTheValueThatIsImpossible() {
    assertRefused(() -> SimulatedTrainee.ofSkill(1.5), "skill", "1.5");
    assertRefused(() -> SimulatedTrainee.steady(0), "meanLength");
    assertRefused(
        () -> SimulatedRun.of(0.2, SimulatedProcess.TIG, SimulatedTrainee.good(), 10),
        "pauseSeconds",
        "0.2");
  }
}
