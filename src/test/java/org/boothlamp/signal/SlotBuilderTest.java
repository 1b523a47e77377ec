package org.boothlamp.signal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.boothlamp.testing.PairScript;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class SlotBuilderTest {

  /** A slot as it was delivered. */
  private record Seen(long number, long pairs, int missing, boolean isMissing, int firstCount) {}

  private static final int NOTHING = -1;

  private final List<Seen> seen = new ArrayList<>();

  private SlotBuilder builder(int pairsPerSecond) {
    return new SlotBuilder(
        pairsPerSecond, PairScript.SCALE, new ShortCircuitRule(8, 9), this::onSlot);
  }

  private void onSlot(Slot slot) {
    seen.add(
        new Seen(
            slot.number(),
            slot.sums().pairs(),
            slot.missingPairs(),
            slot.isMissing(),
            slot.isMissing() ? NOTHING : slot.current[0]));
  }

  /** Counts that rise with the index, so that a slot tells which pairs it holds. */
  private static void send(SlotBuilder builder, long firstIndex, int count) {
    short[] counts = new short[count];
    for (int k = 0; k < count; k++) {
      counts[k] = (short) ((firstIndex + k) % 30_000);
    }
    builder.accept(counts, counts, count, firstIndex);
  }

  @ParameterizedTest
  @ValueSource(ints = {100, 200, 860, 4_410, 5_000, 10_000, 44_100, 99_999})
  void shouldCutEveryRateIntoAHundredSlotsASecond(int rate) {
    SlotBuilder builder = builder(rate);
    for (int second = 0; second < 7; second++) {
      send(builder, (long) second * rate, rate);
    }
    assertEquals(700, seen.size());
    assertEquals(7L * rate, seen.stream().mapToLong(Seen::pairs).sum());
    for (int k = 0; k < seen.size(); k++) {
      long firstPair = (long) Math.ceil(k * (rate / 100.0) - 1e-9);
      assertEquals(k, seen.get(k).number());
      assertEquals(firstPair % 30_000, seen.get(k).firstCount(), "first pair of slot " + k);
      assertEquals(0, seen.get(k).missing());
    }
  }

  @Test
  void shouldNotCareHowThePairsAreCutIntoBlocks() {
    SlotBuilder whole = builder(4_410);
    send(whole, 0, 20_000);
    List<Seen> expected = List.copyOf(seen);
    seen.clear();
    SlotBuilder pieces = builder(4_410);
    Random random = new Random(5);
    for (int from = 0; from < 20_000; ) {
      int count = Math.min(random.nextInt(200), 20_000 - from);
      send(pieces, from, count);
      from += count;
    }
    assertEquals(expected, seen);
  }

  @Test
  void shouldCountPairsMissingInsideASlot() {
    SlotBuilder builder = builder(1_000);
    send(builder, 0, 3);
    send(builder, 7, 3);
    assertEquals(List.of(new Seen(0, 6, 4, false, 0)), seen);
  }

  @Test
  void shouldDeliverSlotsWithoutPairsAsMissing() {
    SlotBuilder builder = builder(1_000);
    send(builder, 0, 13);
    send(builder, 34, 6);
    assertEquals(
        List.of(
            new Seen(0, 10, 0, false, 0),
            new Seen(1, 3, 7, false, 10),
            new Seen(2, 0, 10, true, NOTHING),
            new Seen(3, 6, 4, false, 34)),
        seen);
  }

  @Test
  void shouldMissNothingWhereAGapIsWholeSlots() {
    SlotBuilder builder = builder(1_000);
    send(builder, 0, 10);
    send(builder, 20, 10);
    assertEquals(List.of(0, 10, 0), seen.stream().map(Seen::missing).toList());
  }

  @Test
  void shouldBridgeAnHourWithoutLosingTheCount() {
    SlotBuilder builder = builder(10_000);
    send(builder, 0, 100);
    send(builder, 36_000_000L + 100, 100);
    assertEquals(360_002, seen.size());
    assertEquals(360_001, seen.get(seen.size() - 1).number());
    assertEquals(36_000_000L, seen.stream().mapToLong(Seen::missing).sum());
    assertEquals(360_000, seen.stream().filter(Seen::isMissing).count());
  }

  @ParameterizedTest
  @CsvSource({"4294967296, 5000", "999999999999, 860", "30000000000007, 44100"})
  void shouldStartAtAnyIndex(long firstIndex, int rate) {
    SlotBuilder builder = builder(rate);
    send(builder, firstIndex, rate);
    Seen first = seen.get(0);
    assertEquals(firstIndex * 100 / rate, first.number());
    assertEquals((firstIndex - first.missing()), firstPairOf(first.number(), rate));
    assertEquals(first.number() + seen.size() - 1, seen.get(seen.size() - 1).number());
    assertFalse(first.isMissing());
  }

  private static long firstPairOf(long slot, int rate) {
    return (slot * rate + 99) / 100;
  }

  @Test
  void shouldRefusePairsOutOfOrder() {
    SlotBuilder builder = builder(1_000);
    send(builder, 50, 10);
    IllegalArgumentException refused =
        assertThrows(IllegalArgumentException.class, () -> send(builder, 59, 10));
    assertTrue(refused.getMessage().contains("firstIndex=59"), refused.getMessage());
    assertTrue(refused.getMessage().contains("expected 60"), refused.getMessage());
  }

  @Test
  void shouldRefuseARateThatLeavesSlotsEmpty() {
    IllegalArgumentException refused =
        assertThrows(IllegalArgumentException.class, () -> builder(99));
    assertTrue(refused.getMessage().contains("pairsPerSecond=99"), refused.getMessage());
  }

  @Test
  void shouldSumOnlyTheFlowingPartOfAnEdge() {
    PairSums part = new PairSums();
    PairScript.at(10_000)
        .arc(0, 70, 0.004)
        .arc(120, 22, 0.006)
        .sendTo((Slot slot) -> slot.sumFlowing(part));
    assertEquals(60, part.pairs());
    assertEquals(120, part.meanAmps(PairScript.SCALE), 0);
    assertEquals(22, part.meanVolts(PairScript.SCALE), 0);
    assertEquals(22 * 128, part.highestVoltageCount());
  }

  @Test
  void shouldKeepADipInsideTheFlowingPart() {
    PairSums part = new PairSums();
    PairScript.at(10_000)
        .arc(0, 70, 0.002)
        .arc(120, 22, 0.003)
        .arc(0, 70, 0.001)
        .arc(120, 22, 0.004)
        .sendTo((Slot slot) -> slot.sumFlowing(part));
    assertEquals(80, part.pairs());
  }

  @Test
  void shouldTakeTheWholeSlotWhereNothingOrEverythingFlows() {
    PairSums part = new PairSums();
    PairScript.at(10_000).idle(0.01).sendTo((Slot slot) -> slot.sumFlowing(part));
    assertEquals(100, part.pairs());
    PairScript.at(10_000).arc(-120, -22, 0.01).sendTo((Slot slot) -> slot.sumFlowing(part));
    assertEquals(100, part.pairs());
  }

  /** Slots of two pairs each, the first count of each slot written down. */
  private List<Integer> countsOf(int offset, int... counts) {
    List<Integer> found = new ArrayList<>();
    SlotBuilder[] builder = new SlotBuilder[1];
    builder[0] =
        new SlotBuilder(
            200,
            PairScript.SCALE,
            new ShortCircuitRule(8, 9),
            slot -> {
              found.add((int) slot.current[0]);
              builder[0].setCurrentOffset(offset);
            });
    for (int k = 0; k < counts.length; k++) {
      short[] pair = {(short) counts[k], (short) counts[k]};
      builder[0].accept(pair, pair, 2, 2L * k);
    }
    return found;
  }

  @Test
  void shouldTakeTheOffsetOffTheCurrentFromTheNextSlotOn() {
    assertEquals(List.of(100, 93, -17), countsOf(7, 100, 100, -10));
    assertEquals(List.of(100, 107), countsOf(-7, 100, 100));
  }

  @Test
  void shouldKeepACorrectedCountInsideSixteenBits() {
    assertEquals(List.of(0, 32_767), countsOf(-7, 0, 32_767));
    assertEquals(List.of(0, -32_768), countsOf(7, 0, -32_768));
  }

  private static final int LOW = -2_048;
  private static final int HIGH = 2_047;

  @ParameterizedTest
  @ValueSource(ints = {0, 5, -5})
  void shouldCountPairsAtTheLimitsAsTheConverterGaveThem(int offset) {
    List<Integer> current = new ArrayList<>();
    List<Integer> voltage = new ArrayList<>();
    SlotBuilder[] builder = new SlotBuilder[1];
    builder[0] =
        new SlotBuilder(
            400,
            PairScript.SCALE,
            new ShortCircuitRule(8, 9),
            slot -> {
              current.add(slot.currentPairsAtLimit(LOW, HIGH));
              voltage.add(slot.voltagePairsAtLimit(LOW, HIGH));
              builder[0].setCurrentOffset(offset);
            });
    short[] amps = {0, 0, 0, 0, LOW, HIGH, HIGH - 1, 0, LOW + 1, HIGH - 1, 0, 0};
    short[] volts = {0, 0, 0, 0, 0, 0, 0, 0, LOW, LOW, LOW, HIGH};
    builder[0].accept(amps, volts, amps.length, 0);
    assertEquals(List.of(0, 2, 0), current);
    assertEquals(List.of(0, 0, 4), voltage);
  }

  @Test
  void shouldKnowAClippedCountThatACorrectionWouldCarryPastTheRange() {
    List<Integer> clipped = new ArrayList<>();
    SlotBuilder[] builder = new SlotBuilder[1];
    builder[0] =
        new SlotBuilder(
            200,
            PairScript.SCALE,
            new ShortCircuitRule(8, 9),
            slot -> {
              clipped.add(slot.currentPairsAtLimit(Short.MIN_VALUE, Short.MAX_VALUE));
              builder[0].setCurrentOffset(-9);
            });
    short[] amps = {0, 0, Short.MAX_VALUE, 0};
    builder[0].accept(amps, amps, amps.length, 0);
    assertEquals(List.of(0, 1), clipped);
  }
}
