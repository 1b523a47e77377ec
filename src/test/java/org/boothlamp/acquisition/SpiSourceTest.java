package org.boothlamp.acquisition;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.pi4j.io.spi.SpiBus;
import com.pi4j.io.spi.SpiChipSelect;
import com.pi4j.io.spi.SpiMode;
import java.util.List;
import org.boothlamp.monitor.SampleBlock;
import org.boothlamp.monitor.SampleSource.Outcome;
import org.boothlamp.monitor.SourceFormat;
import org.boothlamp.testing.HandTurnedClock;
import org.boothlamp.testing.PairStream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;

/** A converter behind a Pi4J provider, on a clock that only waiting and transfers turn. */
class SpiSourceTest {

  private static final int PAIRS_PER_SECOND = 5_000;
  private static final long PERIOD_NANOS = 200_000;
  private static final long MILLI = 1_000_000;

  private final HandTurnedClock clock = new HandTurnedClock();
  private final PairStream pairs = PairStream.endless(12);
  private final ScriptedSpi bus = new ScriptedSpi(clock, SpiDevice.MCP3208, pairs);
  private final SpiSource source = bus.source(new ChannelPair(2, 5), PAIRS_PER_SECOND);
  private final SampleBlock block = new SampleBlock();

  @AfterEach
  void close() {
    source.close();
    assertEquals(0, bus.open(), "a closed source must leave nothing open");
  }

  private void readFor(long millis) {
    long end = clock.nanoTime() + millis * MILLI;
    while (clock.nanoTime() < end) {
      source.read(block);
    }
  }

  @Test
  void shouldOpenTheDeviceThatItWasTold() {
    source.read(block);
    assertEquals(SpiBus.BUS_0, bus.config().bus());
    assertEquals(SpiChipSelect.CS_1, bus.config().chipSelect());
    assertEquals(SpiMode.MODE_0, bus.config().mode());
    assertEquals(1_000_000, bus.config().baud());
  }

  @Test
  void shouldAskForTheCurrentFirstAndForTheVoltageNext() {
    bus.recordFrames();
    source.read(block);
    assertEquals(
        List.of("06 80 00", "07 40 00", "06 80 00", "07 40 00"), bus.frames().subList(0, 4));
  }

  @Test
  void shouldTakeTenMillisecondsOfPairsAReadAtAbsoluteDeadlines() {
    bus.takeNanos(30_000);
    long start = clock.nanoTime();
    for (int read = 0; read < 100; read++) {
      assertEquals(Outcome.PAIRS, source.read(block));
      assertEquals(50, block.count);
      assertEquals(50L * read, block.firstIndex);
    }
    long lastIsDone = start + 4_999 * PERIOD_NANOS + 60_000;
    assertEquals(lastIsDone, clock.nanoTime());
    assertEquals(0, source.counters().lostPairs);
    assertEquals(0, source.jitter().worstNanos());
    assertNull(source.trouble());
  }

  @Test
  void shouldTakeAPairLateWhenItIsLessThanAPeriodLate() {
    source.read(block);
    clock.advanceNanos(PERIOD_NANOS + 150_000);
    source.read(block);
    assertEquals(50, block.firstIndex);
    assertEquals(50, block.count);
    assertEquals(150_000, source.jitter().worstNanos());
    assertEquals(0, source.counters().lostPairs);
  }

  @Test
  void shouldLosePairsRatherThanMoveThemInTime() {
    source.read(block);
    clock.advanceNanos(8 * PERIOD_NANOS);
    source.read(block);
    assertEquals(57, block.firstIndex);
    assertEquals(7, source.counters().lostPairs);
    assertEquals(7 * PERIOD_NANOS, source.jitter().worstNanos());
  }

  @Test
  void shouldEndABlockBeforeAGap() {
    source.read(block);
    bus.takeNanos(PERIOD_NANOS);
    source.read(block);
    assertEquals(50, block.firstIndex);
    assertEquals(1, block.count);
    bus.takeNanos(0);
    source.read(block);
    assertEquals(52, block.firstIndex);
    assertEquals(1, source.counters().lostPairs);
  }

  @Test
  void shouldSayWhatRateABusThatIsTooSlowAchieves() {
    bus.takeNanos(161_290);
    readFor(4_000);
    assertEquals(
        "mcp3208 at /dev/spidev0.1: asked for 5000 pairs/s, achieved 3100 over 2 s and 3100 over 3"
            + " s; lower source.pairs_per_second",
        source.trouble());
    assertTrue(source.performance().startsWith("3100 of 5000 pairs/s"), source.performance());
    double lost = source.counters().lostPairs / 4.0;
    assertEquals(1_900, lost, 20);
  }

  @Test
  void shouldSayARateThatIsAlmostHeld() {
    source.read(block);
    for (int read = 0; read < 1_200; read++) {
      clock.advanceNanos(2 * PERIOD_NANOS + PERIOD_NANOS / 2);
      source.read(block);
    }
    assertEquals(97, 100.0 * source.jitter().pairsPerSecond() / PAIRS_PER_SECOND, 1.5);
    assertTrue(source.rateTrouble().contains("asked for 5000 pairs/s"), source.rateTrouble());
  }

  @Test
  void shouldKeepTheIndexInStepWithTheClockOverALongTime() {
    SpiSource odd = bus.source(new ChannelPair(0, 1), 3_001);
    odd.read(block);
    long hundredDays = 8_640_000;
    clock.advanceNanos(hundredDays * 1_000_000_000L - 9_000_000);
    odd.read(block);
    assertEquals(hundredDays * 3_001, block.firstIndex, 32);
    odd.close();
  }

  @Test
  void shouldDeliverNothingWhileTheBusFails() {
    source.read(block);
    bus.setBroken(true);
    for (int read = 0; read < 100; read++) {
      assertEquals(Outcome.NOTHING, source.read(block));
      assertEquals(0, block.count);
    }
    assertEquals(
        "/dev/spidev0.1: a transfer failed: transferred -1 bytes of 3; see that the converter is"
            + " connected and that no other program uses the bus",
        source.trouble());
  }

  @Test
  void shouldOpenABrokenBusAgainTwiceASecondAndLeaveNoneOpen() {
    bus.setBroken(true);
    readFor(10_000);
    assertEquals(20, bus.openings(), 1);
    assertEquals(0, bus.open());
  }

  @Test
  void shouldGoOnAtTheRightIndexWhenTheConverterIsBack() {
    source.read(block);
    bus.setBroken(true);
    long gone = clock.nanoTime();
    readFor(3_000);
    bus.setBroken(false);
    Outcome outcome = Outcome.NOTHING;
    while (outcome == Outcome.NOTHING) {
      outcome = source.read(block);
    }
    double awaySeconds = (clock.nanoTime() - gone) / 1e9;
    assertEquals(50 + awaySeconds * PAIRS_PER_SECOND, block.firstIndex + block.count, 2);
    assertEquals(1, source.counters().reconnects);
    assertEquals(0, source.counters().lostPairs, "an outage is not a bus that is too slow");
    assertNull(source.trouble());
  }

  @Test
  void shouldNotTakeALineHeldHighForFullScale() {
    bus.setLifted(true);
    assertEquals(Outcome.NOTHING, source.read(block));
    assertTrue(source.trouble().contains("no converter answers"), source.trouble());
    assertEquals(1, source.counters().badFrames);
  }

  @Test
  void shouldBeginAtZeroHoweverLateTheConverterComes() {
    bus.setMissing(true);
    readFor(5_000);
    assertEquals(
        "/dev/spidev0.1: Failed to open SPI device; see that SPI is switched on in the board's"
            + " set-up, that the user may open the device (group spi), and that bus and chip_select"
            + " are right",
        source.trouble());
    assertEquals(0, bus.open());
    bus.setMissing(false);
    readFor(1_000);
    assertEquals(0, source.counters().reconnects);
    assertTrue(block.firstIndex < PAIRS_PER_SECOND);
  }

  @Test
  void shouldSayAtOnceThatItCannotBeOpened() {
    bus.setMissing(true);
    SourceException refused = assertThrows(SourceException.class, source::open);
    assertEquals(SourceException.Reason.MISSING, refused.reason());
  }

  @Test
  void shouldTellTheRangeOfItsCounts() {
    assertEquals(
        new SourceFormat(PAIRS_PER_SECOND, 0, 4_095, "mcp3208 at /dev/spidev0.1"), source.format());
  }
}
