package org.boothlamp.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.boothlamp.arc.ArcRule;
import org.boothlamp.signal.ChannelScale;
import org.boothlamp.signal.PairScale;
import org.boothlamp.signal.Polarity;
import org.boothlamp.signal.ShortCircuitRule;
import org.boothlamp.testing.KnownRecording;
import org.boothlamp.testing.KnownRecording.Truth;
import org.boothlamp.testing.PairsInMemory;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.FieldSource;

/** What can be seen of a raw recording that is reduced to columns. */
class RawColumnsTest {

  private static final List<String> WITH_SHORTS =
      List.of("short-arc-four-runs", "tacks", "stick-five-runs");

  private static final ShortCircuitRule RULE =
      new ShortCircuitRule(ArcRule.STANDARD.shortCircuitVolts(), ArcRule.STANDARD.arcOffAmps());

  private static final PairScale ONE_TO_ONE =
      new PairScale(new ChannelScale(1, 0), new ChannelScale(1, 0));

  private static PairsInMemory pairs(int... volts) {
    short[] voltage = new short[volts.length];
    short[] current = new short[volts.length];
    for (int k = 0; k < volts.length; k++) {
      voltage[k] = (short) volts[k];
      current[k] = 100;
    }
    return new PairsInMemory(5_000, ONE_TO_ONE, current, voltage, Long.MAX_VALUE);
  }

  @Test
  void shouldGoDownToSinglePairs() {
    PairsInMemory pairs = pairs(20, 21, 3, 22, 23);
    RawWindow window = RawWindow.of(pairs, 0.0002, 0.0008);
    RawColumns columns = RawColumns.of(window, Polarity.DC_PLUS, 100);
    assertTrue(columns.areSinglePairs());
    assertEquals(3, columns.size());
    assertEquals(0.0002, columns.columnSeconds(), 1e-12);
    assertEquals(21, columns.lowestVolts[0]);
    assertEquals(3, columns.highestVolts[1]);
    assertEquals(100, columns.lowestAmps[2]);
  }

  @Test
  void shouldKeepTheLowestAndHighestWhereColumnsHoldMany() {
    RawWindow window = RawWindow.of(pairs(20, 21, 3, 22, 23, 60), -1, 1);
    RawColumns columns = RawColumns.of(window, Polarity.DC_PLUS, 2);
    assertFalse(columns.areSinglePairs());
    assertEquals(3, columns.lowestVolts[0]);
    assertEquals(21, columns.highestVolts[0]);
    assertEquals(60, columns.highestVolts[1]);
  }

  @Test
  void shouldTurnElectrodeNegativeRoundAndLeaveMissingPairsOut() {
    PairsInMemory held = pairs(-20, -21, -22, -23);
    PairsInMemory gap = new PairsInMemory(5_000, ONE_TO_ONE, held.current(), held.voltage(), 2);
    RawColumns columns = RawColumns.of(RawWindow.of(gap, 0, 1), Polarity.DC_MINUS, 4);
    assertEquals(21, columns.lowestVolts[1]);
    assertTrue(Double.isNaN(columns.lowestVolts[2]));
  }

  @Test
  void shouldHaveNoWindowBeyondTheRecording() {
    assertNull(RawWindow.of(pairs(20, 20), 1, 2));
    assertNull(RawWindow.of(pairs(20, 20), 0.0003, 0.0003));
    assertEquals(2, RawWindow.of(pairs(20, 20), -5, 5).pairs());
  }

  /**
   * Windows of 0.4 s with a column a pair, one after the other, as somebody looks through a run.
   */
  @ParameterizedTest
  @FieldSource("WITH_SHORTS")
  void shouldShowTheShortCircuitsThereTrulyWereAsSinglePairs(String name) {
    KnownRecording known = KnownRecording.load(name);
    PairsInMemory pairs = PairsInMemory.of(known);
    for (Truth truth : known.segments()) {
      int seen = 0;
      int run = 0;
      for (double at = truth.startSeconds(); at < truth.endSeconds(); at += 0.4) {
        RawWindow window = RawWindow.of(pairs, at, Math.min(at + 0.4, truth.endSeconds()));
        RawColumns columns = window == null ? null : RawColumns.of(window, Polarity.DC_PLUS, 2_001);
        assertTrue(columns == null || columns.areSinglePairs());
        for (int k = 0; columns != null && k < columns.size(); k++) {
          boolean low = columns.highestVolts[k] < 8;
          seen += !low && run >= 3 ? 1 : 0;
          run = low ? run + 1 : 0;
        }
      }
      assertEquals(truth.shortCircuits(), seen, Math.max(1, 0.03 * truth.shortCircuits()), name);
    }
  }

  /** A column of 1 ms is as long as five pairs: no short circuit is lost in it. */
  @Test
  void shouldStillShowThemWhereAWholeSecondStandsInAThousandColumns() {
    KnownRecording known = KnownRecording.load("short-arc-four-runs");
    Truth truth = known.segments().get(0);
    double from = truth.startSeconds() + 1;
    double until = truth.endSeconds() - 1;
    RawWindow window = RawWindow.of(PairsInMemory.of(known), from, until);
    RawColumns columns =
        RawColumns.of(window, Polarity.DC_PLUS, (int) Math.round((until - from) * 1_000));
    int seen = 0;
    for (int k = 1; k < columns.size(); k++) {
      seen += columns.lowestVolts[k - 1] < 8 && columns.lowestVolts[k] >= 8 ? 1 : 0;
    }
    List<ShortSpell> shorts = ShortSpell.in(window, RULE);
    assertEquals(shorts.size(), seen, 0.03 * shorts.size());
  }

  @ParameterizedTest
  @FieldSource("WITH_SHORTS")
  void shouldFindEachShortCircuitWithItsTime(String name) {
    KnownRecording known = KnownRecording.load(name);
    for (Truth truth : known.segments()) {
      RawWindow window =
          RawWindow.of(PairsInMemory.of(known), truth.startSeconds(), truth.endSeconds());
      List<ShortSpell> shorts = ShortSpell.in(window, RULE);
      assertEquals(
          truth.shortCircuits(), shorts.size(), Math.max(1, 0.03 * truth.shortCircuits()), name);
      for (ShortSpell one : shorts) {
        assertTrue(one.startSeconds() >= truth.startSeconds() - 1e-9);
        assertTrue(one.lengthSeconds() >= 0.0005 && one.lengthSeconds() < 0.2, one.toString());
      }
    }
  }

  @Test
  void shouldNotCountShortCircuitsInARecordingThatIsTooSlow() {
    PairsInMemory slow =
        new PairsInMemory(500, ONE_TO_ONE, new short[10], new short[10], Long.MAX_VALUE);
    assertNull(ShortSpell.in(RawWindow.of(slow, 0, 1), RULE));
  }
}
