package org.boothlamp.acquisition;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.boothlamp.monitor.SampleBlock;
import org.boothlamp.monitor.SampleSource.Outcome;
import org.boothlamp.monitor.SourceFormat;
import org.boothlamp.testing.HandTurnedClock;
import org.boothlamp.testing.PairStream;
import org.junit.jupiter.api.Test;

/** A converter behind a Pi4J provider, on a clock that only waiting and messages turn. */
class I2cSourceTest {

  private static final I2cSampling SLOW = new I2cSampling(new ChannelPair(0, 1), 250, 4.096, 860);

  private final HandTurnedClock clock = new HandTurnedClock();
  private final PairStream pairs = PairStream.endless();
  private final SampleBlock block = new SampleBlock();

  private final ScriptedI2c bus = new ScriptedI2c(clock, I2cDevice.ADS1115, pairs);

  private void readFor(I2cSource source, long millis) {
    long end = clock.nanoTime() + millis * 1_000_000;
    while (clock.nanoTime() < end) {
      source.read(block);
    }
  }

  @Test
  void shouldStartWaitAndFetchOneInputAfterTheOther() {
    I2cSource source = bus.source(SLOW);
    bus.takeNanos(90_000, 1_000_000);
    bus.recordWrites();
    source.read(block);
    assertEquals(List.of("01 c3 e3", "00", "01 d3 e3", "00"), bus.writes().subList(0, 4));
    source.close();
  }

  @Test
  void shouldDeliverSignedCounts() {
    I2cSource source = bus.source(SLOW);
    for (int read = 0; read < 200; read++) {
      source.read(block);
      for (int pair = 0; pair < block.count; pair++) {
        assertEquals(pairs.current(block.firstIndex + pair), block.current[pair]);
        assertEquals(pairs.voltage(block.firstIndex + pair), block.voltage[pair]);
      }
    }
    assertEquals(-32_768, source.format().lowestCount());
    assertEquals(32_767, source.format().highestCount());
    source.close();
  }

  @Test
  void shouldTakeTheUpperTwelveBitsOfAnAds1015() {
    PairStream twelve = PairStream.endless(11);
    ScriptedI2c fast = new ScriptedI2c(clock, I2cDevice.ADS1015, twelve);
    I2cSource source = fast.source(new I2cSampling(new ChannelPair(2, 3), 600, 2.048, 3_300));
    source.read(block);
    assertEquals(twelve.current(1), block.current[1]);
    assertEquals(twelve.voltage(1), block.voltage[1]);
    assertEquals(
        new SourceFormat(600, -2_048, 2_047, "ads1015 at /dev/i2c-1 address 0x48"),
        source.format());
    source.close();
  }

  @Test
  void shouldWaitForAConverterThatIsATenthSlow() {
    I2cSource source = bus.source(SLOW);
    bus.takeNanos(90_000, 1_163_000 * 11 / 10);
    assertEquals(Outcome.PAIRS, source.read(block));
    assertEquals(pairs.current(0), block.current[0]);
    assertNull(source.trouble());
    source.close();
  }

  @Test
  void shouldSayWhatTheBusAchievesAtMost() {
    I2cSource source = bus.source(new I2cSampling(new ChannelPair(0, 1), 400, 4.096, 860));
    bus.takeNanos(220_000, 1_163_000);
    readFor(source, 4_000);
    assertTrue(source.trouble().contains("asked for 400 pairs/s, achieved 2"), source.trouble());
    assertTrue(source.counters().lostPairs > 0);
    source.close();
  }

  @Test
  void shouldSayWhatItCannotMeasure() {
    I2cSource source = bus.source(SLOW);
    assertEquals(
        "at most 430 pairs/s: short circuits are not measured, they need 2000; current and voltage"
            + " are taken in turn, at least 1.2 ms apart: power and energy of a current that pulses"
            + " are not exact; 125.0 µV a count, up to 4.096 V",
        source.limits());
    source.close();
  }

  @Test
  void shouldNotWaitForeverForAConversion() {
    I2cSource source = bus.source(SLOW);
    bus.takeNanos(90_000, 60_000_000_000L);
    assertEquals(Outcome.NOTHING, source.read(block));
    assertTrue(source.trouble().contains("a conversion must end in time"), source.trouble());
    source.close();
  }

  @Test
  void shouldSeeThatTheConverterLostItsConfiguration() {
    I2cSource source = bus.source(SLOW);
    source.read(block);
    bus.setForgetful(true);
    assertEquals(Outcome.NOTHING, source.read(block));
    assertEquals(
        "ads1115 at /dev/i2c-1 address 0x48: its configuration must read C3E3 as it was written,"
            + " and reads 8583; see that it is the converter of the settings and that its supply is"
            + " steady",
        source.trouble());
    source.close();
  }

  @Test
  void shouldDeliverNothingWhileNobodyAcknowledgesAndComeBack() {
    I2cSource source = bus.source(SLOW);
    source.read(block);
    bus.setBroken(true);
    for (int read = 0; read < 50; read++) {
      assertEquals(Outcome.NOTHING, source.read(block));
    }
    assertTrue(
        source.trouble().startsWith("/dev/i2c-1 address 0x48: writing failed: Remote I/O error;"),
        source.trouble());
    bus.setBroken(false);
    readFor(source, 1_000);
    assertNull(source.trouble());
    assertEquals(1, source.counters().reconnects);
    assertTrue(bus.openings() > 1);
    source.close();
  }

  /** The library's native part is for ARM only: elsewhere that has to be said, and nothing else. */
  @Test
  void shouldSayThatABusWhichIsNotThereCannotBeOpened() {
    I2cAddress nowhere = new I2cAddress(99, 0x48);
    I2cSource source = I2cSource.at(nowhere, I2cDevice.ADS1115, SLOW);
    SourceException refused = assertThrows(SourceException.class, source::open);
    assertTrue(refused.getMessage().startsWith("/dev/i2c-99 address 0x48: "), refused.getMessage());
    assertTrue(refused.getMessage().contains("see that I2C is switched on"), refused.getMessage());
    source.close();
  }
}
