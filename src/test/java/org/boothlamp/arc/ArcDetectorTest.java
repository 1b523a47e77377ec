package org.boothlamp.arc;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import org.boothlamp.signal.Slot;
import org.boothlamp.testing.PairScript;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class ArcDetectorTest {

  /** A segment or touch as it was found. */
  private record Found(
      ArcChange change, double startSeconds, double seconds, int arcOuts, boolean stuck) {}

  private final List<Found> found = new ArrayList<>();
  private ArcDetector detector = new ArcDetector(PairScript.SCALE, ArcRule.STANDARD);

  private static PairScript script() {
    return PairScript.at(1_000);
  }

  private ArcDetectorTest run(PairScript script) {
    script.sendTo((Slot slot) -> note(detector.accept(slot)));
    return this;
  }

  private void note(ArcChange change) {
    if (change == ArcChange.TOUCH_ENDED || change == ArcChange.SEGMENT_ENDED) {
      found.add(
          new Found(
              change,
              detector.startSlot() / 100.0,
              detector.lengthSlots() / 100.0,
              detector.arcOuts(),
              change == ArcChange.TOUCH_ENDED && detector.isStuck()));
    }
  }

  private static Found segment(double startSeconds, double seconds, int arcOuts) {
    return new Found(ArcChange.SEGMENT_ENDED, startSeconds, seconds, arcOuts, false);
  }

  private static Found touch(double startSeconds, double seconds) {
    return new Found(ArcChange.TOUCH_ENDED, startSeconds, seconds, 0, false);
  }

  @Test
  void shouldFindASegmentFromItsFirstToItsLastSlotWithCurrent() {
    run(script().idle(1).arc(120, 22, 3).idle(1));
    assertEquals(List.of(segment(1, 3, 0)), found);
  }

  /** The first slot may be partly open circuit, the last is known to be one only a slot later. */
  @Test
  void shouldConfirmWithFiveSlotsAtArcVoltsBetweenTheEdges() {
    run(script().idle(0.1).arc(120, 22, 0.06));
    assertFalse(detector.isArc());
    assertEquals(ArcState.CONTACT, detector.state());
    run(PairScript.at(1_000).gap(0.16).arc(120, 22, 0.01));
    assertTrue(detector.isArc());
    assertEquals(ArcState.ARC, detector.state());
  }

  @Test
  void shouldCallATouchWhatIsOffBeforeItIsConfirmed() {
    run(script().idle(1).arc(120, 22, 0.06).idle(1));
    assertEquals(List.of(touch(1, 0.06)), found);
  }

  @ParameterizedTest
  @ValueSource(doubles = {0.01, 0.015, 0.02, 0.03})
  void shouldCallAnElectrodeStuckThoughItDrawsAnArcWhenTornLoose(double arc) {
    run(script().idle(1.003).arc(180, 2.5, 1.5).arc(60, 28, arc).idle(1));
    assertEquals(1, found.size());
    assertEquals(ArcChange.TOUCH_ENDED, found.get(0).change());
    assertTrue(found.get(0).stuck());
  }

  @Test
  void shouldNotCallAnElectrodeStuckForTheTimeItWasAtArcVolts() {
    run(script().idle(1).arc(180, 2, 0.46).arc(60, 28, 0.06).idle(1));
    assertEquals(1, found.size());
    assertFalse(found.get(0).stuck());
  }

  @ParameterizedTest
  @CsvSource({"0.29, true", "0.30, true", "0.31, false"})
  void shouldBridgeInterruptionsUpToThreeTenths(double off, boolean bridged) {
    run(script().idle(1).arc(120, 22, 2).off(off).arc(120, 22, 2).idle(1));
    assertEquals(
        bridged
            ? List.of(segment(1, 4 + off, 1))
            : List.of(segment(1, 2, 0), segment(3 + off, 2, 0)),
        found);
  }

  @Test
  void shouldCountEveryArcOut() {
    run(
        script()
            .idle(1)
            .arc(120, 22, 1)
            .off(0.01)
            .arc(120, 22, 1)
            .off(0.2)
            .arc(120, 22, 0.01)
            .off(0.29)
            .arc(120, 22, 1)
            .idle(1));
    assertEquals(List.of(segment(1, 3.51, 3)), found);
  }

  @ParameterizedTest
  @CsvSource({"0.29, TOUCH_ENDED", "0.30, SEGMENT_ENDED", "0.31, SEGMENT_ENDED"})
  void shouldCallASegmentWhatLastsThreeTenths(double seconds, ArcChange expected) {
    run(script().idle(1).arc(120, 22, seconds).idle(1));
    assertEquals(List.of(new Found(expected, 1, seconds, 0, false)), found);
  }

  @Test
  void shouldCallAnElectrodeStuckAfterHalfASecondAtShortCircuitVolts() {
    run(script().idle(1).arc(180, 2, 0.6).idle(1));
    assertEquals(List.of(new Found(ArcChange.TOUCH_ENDED, 1, 0.6, 0, true)), found);
  }

  @ParameterizedTest
  @CsvSource({"0.49, false", "0.50, false", "0.51, true"})
  void shouldCallAShorterContactATouch(double seconds, boolean stuck) {
    run(script().idle(1).arc(180, 2, seconds).idle(1));
    assertEquals(List.of(new Found(ArcChange.TOUCH_ENDED, 1, seconds, 0, stuck)), found);
  }

  @Test
  void shouldCallAContactAtShortCircuitVoltsATouchHoweverLongItIs() {
    run(script().idle(1).arc(180, 2, 60).idle(1));
    assertEquals(List.of(new Found(ArcChange.TOUCH_ENDED, 1, 60, 0, true)), found);
  }

  /** The slots at either end hold open-circuit volts for part of their time; that is no arc. */
  @Test
  void shouldNotTakeTheEdgesOfAContactForArcVolts() {
    run(script().idle(1.005).arc(180, 2, 0.7).idle(1));
    assertEquals(1, found.size());
    assertEquals(ArcChange.TOUCH_ENDED, found.get(0).change());
    assertTrue(found.get(0).stuck());
  }

  @Test
  void shouldBeginAScratchStartWithTheScratch() {
    run(script().idle(1).arc(180, 2, 0.2).arc(120, 22, 2).idle(1));
    assertEquals(List.of(segment(1, 2.2, 0)), found);
  }

  @Test
  void shouldFindTouchesBeforeTheArcThatHolds() {
    run(
        script()
            .idle(1)
            .arc(180, 2, 0.03)
            .idle(0.5)
            .arc(180, 2, 0.05)
            .idle(0.5)
            .arc(120, 22, 2)
            .idle(1));
    assertEquals(List.of(touch(1, 0.03), touch(1.53, 0.05), segment(2.08, 2, 0)), found);
  }

  @Test
  void shouldTakeAGapInsideTheBridgeForNoArcOut() {
    run(script().idle(1).arc(120, 22, 1).gap(0.2).arc(120, 22, 1).idle(1));
    assertEquals(List.of(segment(1, 2.2, 0)), found);
  }

  @Test
  void shouldCountAnArcOutBesideAGap() {
    run(script().idle(1).arc(120, 22, 1).off(0.1).gap(0.1).arc(120, 22, 1).idle(1));
    assertEquals(List.of(segment(1, 2.2, 1)), found);
  }

  @Test
  void shouldEndASegmentInAGapLongerThanTheBridge() {
    run(script().idle(1).arc(120, 22, 1).gap(0.31).idle(0.01));
    assertEquals(List.of(segment(1, 1, 0)), found);
    assertTrue(detector.endedInGap());
  }

  @Test
  void shouldTellAnOrdinaryEndFromAGap() {
    run(script().idle(1).arc(120, 22, 1).gap(0.1).arc(120, 22, 1).idle(1));
    assertFalse(detector.endedInGap());
  }

  @Test
  void shouldTurnOffBelowSixtyPercentOfTheArcOnCurrent() {
    run(script().idle(1).arc(120, 22, 1).arc(9, 20, 1).idle(1));
    assertEquals(List.of(segment(1, 2, 0)), found);
    found.clear();
    detector = new ArcDetector(PairScript.SCALE, ArcRule.STANDARD);
    run(script().idle(1).arc(120, 22, 1).arc(8.9375, 20, 1).idle(1));
    assertEquals(List.of(segment(1, 1, 0)), found);
  }

  @Test
  void shouldTurnOnAtTheArcOnCurrent() {
    run(script().idle(1).arc(14.9375, 20, 1).arc(15, 20, 1).idle(1));
    assertEquals(List.of(segment(2, 1, 0)), found);
  }

  @Test
  void shouldFindAWeakTigArcWithALowerArcOnCurrent() {
    detector.setRule(ArcRule.STANDARD.withArcOnAmps(5));
    run(script().idle(1).arc(-8, -11, 2).idle(1));
    assertEquals(List.of(segment(1, 2, 0)), found);
  }

  @Test
  void shouldNotFindAWeakTigArcWithTheStandardCurrent() {
    run(script().idle(1).arc(-8, -11, 2).idle(1));
    assertEquals(List.of(), found);
  }

  @ParameterizedTest
  @ValueSource(ints = {1, -1})
  void shouldFindEitherPolarity(int electrode) {
    run(script().idle(1).arc(electrode * 120, electrode * 22, 2).idle(1));
    assertEquals(List.of(segment(1, 2, 0)), found);
  }

  @ParameterizedTest
  @ValueSource(doubles = {50, 60, 200})
  void shouldFindAnAlternatingArcAsOneSegment(double hertz) {
    run(PairScript.at(10_000).idle(1).square(120, 18, hertz, 2).idle(1));
    run(PairScript.at(10_000).gap(4).idle(1).sine(170, 18, hertz, 2).idle(1));
    assertEquals(List.of(segment(1, 2, 0), segment(5, 2, 0)), found);
  }

  @Test
  void shouldHaveNothingToFinishWhileOff() {
    run(script().idle(1));
    assertEquals(ArcChange.NONE, detector.finish());
  }

  @Test
  void shouldFinishAContactAsATouch() {
    run(script().idle(1).arc(120, 22, 0.03));
    assertEquals(ArcChange.TOUCH_ENDED, detector.finish());
    assertTrue(detector.isOff());
    assertEquals(3, detector.lengthSlots());
  }

  @Test
  void shouldFinishAnArcAsASegmentUpToItsLastCurrent() {
    run(script().idle(1).arc(120, 22, 1).off(0.2));
    assertEquals(ArcChange.SEGMENT_ENDED, detector.finish());
    assertEquals(100, detector.lengthSlots());
    assertFalse(detector.slotHasCurrent());
  }

  @Test
  void shouldFinishAnArcTooShortForASegmentAsATouch() {
    run(script().idle(1).arc(120, 22, 0.1));
    assertTrue(detector.isArc());
    assertEquals(ArcChange.TOUCH_ENDED, detector.finish());
  }

  @ParameterizedTest
  @CsvSource({
    "0, 5, 30, 30, 8",
    "15, 0, 30, 30, 8",
    "15, 5, -1, 30, 8",
    "15, 5, 30, 0, 8",
    "15, 5, 30, 30, 0"
  })
  void shouldRefuseARuleOutOfRange(double amps, int confirm, int bridge, int least, double volts) {
    IllegalArgumentException refused =
        assertThrows(
            IllegalArgumentException.class, () -> new ArcRule(amps, confirm, bridge, least, volts));
    assertTrue(refused.getMessage().contains("bridgeSlots=" + bridge), refused.getMessage());
  }

  @Test
  void shouldKeepTheRuleWithoutAnotherCurrent() {
    assertEquals(ArcRule.STANDARD, ArcRule.STANDARD.withArcOnAmps(Double.NaN));
    assertEquals(3, ArcRule.STANDARD.withArcOnAmps(5).arcOffAmps(), 1e-12);
  }
}
