package org.boothlamp.acquisition;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.junit.jupiter.api.Test;

class SimulatedTruthTest {

  private static final double STEP_SECONDS = 0.0001;

  private final SimulatedTruth truth = new SimulatedTruth(STEP_SECONDS, 3);

  private void flow(double seconds, double amps, double volts) {
    for (int k = 0; k < Math.round(seconds / STEP_SECONDS); k++) {
      truth.add(amps, volts);
    }
  }

  private void pass(double seconds) {
    truth.pass((int) Math.round(seconds / STEP_SECONDS));
  }

  @Test
  void shouldMeasureAStretchFromItsFirstToItsLastMoment() {
    truth.beginRun(7);
    pass(1);
    flow(2, -100, -20);
    flow(2, -200, -30);
    pass(0.5);
    SimulatedBurn burn = truth.burns().get(0);
    assertEquals(7, burn.runIndex());
    assertEquals(1, burn.startSeconds(), 1e-9);
    assertEquals(5, burn.endSeconds(), 1e-9);
    assertEquals(150, burn.meanAmps(), 1e-9);
    assertEquals(25, burn.meanVolts(), 1e-9);
    assertEquals(Math.sqrt(25_000), burn.rmsAmps(), 1e-9);
    assertEquals(2 * 2_000 + 2 * 6_000, burn.energyJoules(), 1e-6);
    assertEquals(4_000, burn.meanWatts(), 1e-6);
  }

  @Test
  void shouldLeaveAnArcOutOutOfTheMeansAndCountIt() {
    flow(1, 100, 20);
    pass(0.2);
    flow(1, 100, 20);
    pass(0.5);
    SimulatedBurn burn = truth.burns().get(0);
    assertEquals(1, burn.arcOuts());
    assertEquals(2.2, burn.lengthSeconds(), 1e-9);
    assertEquals(2, burn.flowingSeconds(), 1e-9);
    assertEquals(100, burn.meanAmps(), 1e-9);
  }

  @Test
  void shouldSplitWhereTheCurrentIsGoneForLongerThanABridge() {
    flow(1, 100, 20);
    pass(0.31);
    flow(1, 100, 20);
    pass(0.31);
    assertEquals(2, truth.burns().size());
  }

  @Test
  void shouldTakeACurrentOnItsWayThroughZeroAsFlowing() {
    flow(0.5, -100, -20);
    flow(0.001, 0, 0);
    flow(0.499, 100, 20);
    pass(0.5);
    SimulatedBurn burn = truth.burns().get(0);
    assertEquals(0, burn.arcOuts());
    assertEquals(1, burn.flowingSeconds(), 1e-9);
    assertEquals(99.9, burn.meanAmps(), 1e-9);
  }

  @Test
  void shouldCountShortCircuitsOfHalfAMillisecondOrMore() {
    flow(0.1, 100, 20);
    flow(0.0005, 100, 7.9);
    flow(0.1, 100, 20);
    flow(0.0004, 100, 2);
    flow(0.1, 100, 20);
    pass(0.5);
    assertEquals(1, truth.burns().get(0).shortCircuits());
  }

  @Test
  void shouldCallItATouchWhenItIsShortOrNeverAtArcVolts() {
    flow(0.2, 100, 20);
    pass(0.5);
    flow(1, 140, 3);
    pass(0.5);
    flow(1, 140, 20);
    pass(0.5);
    List<SimulatedBurn> burns = truth.burns();
    assertEquals(List.of(true, true, false), burns.stream().map(SimulatedBurn::isTouch).toList());
  }

  @Test
  void shouldKeepTheNewestStretchesWhenItsPlacesAreUsedUp() {
    for (int k = 0; k < 5; k++) {
      truth.beginRun(k);
      flow(0.5, 100, 20);
      pass(0.5);
    }
    assertEquals(5, truth.finishedCount());
    assertEquals(List.of(2, 3, 4), truth.burns().stream().map(SimulatedBurn::runIndex).toList());
  }

  @Test
  void shouldNotShowAStretchThatIsNotOverNorThePlaceItTook() {
    for (int k = 0; k < 3; k++) {
      truth.beginRun(k);
      flow(0.5, 100, 20);
      pass(0.5);
    }
    flow(0.5, 100, 20);
    assertEquals(List.of(1, 2), truth.burns().stream().map(SimulatedBurn::runIndex).toList());
    truth.end();
    assertEquals(3, truth.burns().size());
  }

  @Test
  void shouldIgnoreACurrentBelowFifteenAmps() {
    flow(1, 14, 20);
    pass(0.5);
    assertEquals(List.of(), truth.burns());
  }
}
