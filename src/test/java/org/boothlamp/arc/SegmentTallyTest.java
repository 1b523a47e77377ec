package org.boothlamp.arc;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.boothlamp.signal.PairScale;
import org.boothlamp.signal.Slot;
import org.boothlamp.testing.PairScript;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class SegmentTallyTest {

  private static final PairScale SCALE = PairScript.SCALE;

  private final SegmentTally tally = new SegmentTally();

  private void run(PairScript script) {
    script.sendTo(
        (Slot slot) -> {
          if (slot.sums().meanAbsoluteAmps(SCALE) >= 9) {
            tally.addArcOn(slot);
          } else {
            tally.addArcOff();
          }
        });
  }

  /** 4 ms of the first slot and 6 ms of the last are arc: they must not show in the means. */
  @Test
  void shouldKeepOpenCircuitVoltsOutOfTheMeans() {
    run(PairScript.at(5_000).idle(0.506).arc(120, 22, 1).idle(0.494));
    assertEquals(120, tally.arcOn().meanAbsoluteAmps(SCALE), 0);
    assertEquals(22, tally.arcOn().meanAbsoluteVolts(SCALE), 0);
    assertEquals(5_000, tally.arcOn().pairs());
    assertEquals(5_050, tally.all().pairs());
  }

  @Test
  void shouldCutTheEdgesAtAnArcOutToo() {
    run(PairScript.at(5_000).idle(0.506).arc(120, 22, 0.5).off(0.1).arc(120, 22, 0.5).idle(0.494));
    assertEquals(22, tally.arcOn().meanAbsoluteVolts(SCALE), 0);
    assertEquals(5_000, tally.arcOn().pairs());
  }

  @Test
  void shouldKeepEnergyOfTheWholeSlots() {
    run(PairScript.at(5_000).idle(0.506).arc(120, 22, 1).idle(0.494));
    double joules = tally.all().meanWatts(SCALE) * tally.all().pairs() / 5_000;
    assertEquals(2_640, joules, 1e-6);
  }

  @ParameterizedTest
  @CsvSource({"0.01", "0.02", "0.03"})
  void shouldHoldSegmentsOfAFewSlots(double seconds) {
    run(PairScript.at(5_000).idle(0.1).arc(120, 22, seconds).idle(0.1));
    assertEquals(Math.round(seconds * 5_000), tally.arcOn().pairs());
    assertEquals(22, tally.arcOn().meanAbsoluteVolts(SCALE), 0);
  }

  @Test
  void shouldTellTheMeansOfARunningSegmentAgainAndAgain() {
    run(PairScript.at(5_000).idle(0.1).arc(120, 22, 0.5));
    assertEquals(2_500, tally.arcOn().pairs());
    assertEquals(2_500, tally.arcOn().pairs());
  }

  @Test
  void shouldForgetTheLastSegment() {
    run(PairScript.at(5_000).arc(120, 22, 0.5));
    tally.clear();
    assertEquals(0, tally.all().pairs());
    assertEquals(0, tally.arcOn().pairs());
  }
}
