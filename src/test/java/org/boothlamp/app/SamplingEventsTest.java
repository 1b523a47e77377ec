package org.boothlamp.app;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.time.ZoneId;
import java.util.List;
import org.boothlamp.boothlog.BoothLog;
import org.boothlamp.boothlog.BoothLogReader;
import org.boothlamp.boothlog.BoothLogWriter;
import org.boothlamp.boothlog.LogClocks;
import org.boothlamp.boothlog.LogQueue;
import org.boothlamp.monitor.SampleBlock;
import org.boothlamp.monitor.SampleSource;
import org.boothlamp.monitor.SourceCounters;
import org.boothlamp.monitor.SourceFormat;
import org.boothlamp.monitor.WallClock;
import org.boothlamp.report.EventRecord;
import org.boothlamp.testing.HandTurnedClock;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class SamplingEventsTest {

  private static final String SLOW = "asked for 5000 pairs/s, achieved 3100 over 2 s";

  @TempDir Path folder;

  private final HandTurnedClock clock = new HandTurnedClock();
  private final MeasuredSource source = new MeasuredSource();

  /** Lets a monitor run by hand: what a test does to the source comes with each second. */
  private List<EventRecord> eventsOf(int seconds, Second second) {
    Path file = folder.resolve(BoothLog.FILE_NAME);
    LogClocks clocks = new LogClocks(clock, WallClock.SYSTEM, ZoneId.systemDefault());
    BoothLogWriter writer =
        new BoothLogWriter(BoothLog.open(file), "B-07", new LogQueue(), clocks, signIn -> {});
    SamplingEvents events = new SamplingEvents(source, writer, clock);
    for (int k = 0; k < seconds; k++) {
      second.pass(k);
      events.look();
      clock.advanceMillis(1_000);
    }
    events.finish();
    writer.close();
    try (BoothLogReader reader = BoothLogReader.open(file)) {
      return reader.read(0, Long.MAX_VALUE).events();
    }
  }

  @FunctionalInterface
  private interface Second {
    void pass(int number);
  }

  @Test
  void shouldTellTenSecondsAfterItFirstKnowsAndThenEveryHour() {
    List<EventRecord> events =
        eventsOf(
            7_300,
            second -> source.performance = second < 3 ? null : second < 100 ? "even" : "later");
    assertEquals(
        List.of("sampling", "sampling", "sampling"),
        events.stream().map(EventRecord::what).toList());
    assertEquals(
        List.of("even", "later", "later"), events.stream().map(EventRecord::detail).toList());
  }

  @Test
  void shouldTellNothingOfASourceThatDoesNotMeasure() {
    source.measures = false;
    source.performance = "even";
    source.rateTrouble = SLOW;
    assertEquals(List.of(), eventsOf(100, second -> {}));
  }

  @Test
  void shouldTellWhenTheRateWasNotHeldAndHowManyPairsItCost() {
    List<EventRecord> events =
        eventsOf(
            60,
            second -> {
              source.counters.lostPairs += second >= 20 && second < 30 ? 1_900 : 0;
              source.rateTrouble = second >= 22 && second < 32 ? SLOW : null;
            });
    assertEquals(1, events.size());
    EventRecord spell = events.get(0);
    assertEquals("rate not held", spell.what());
    assertEquals(SLOW, spell.detail());
    assertEquals(10, spell.lengthSeconds(), 1e-6);
    assertEquals(19_000, spell.count());
  }

  @Test
  void shouldEndWithTheMonitorWhatLastsToItsEnd() {
    List<EventRecord> events =
        eventsOf(
            20,
            second -> {
              source.counters.lostPairs += 100;
              source.rateTrouble = SLOW;
            });
    assertEquals(1, events.size());
    assertEquals(20, events.get(0).lengthSeconds(), 1e-6);
    assertTrue(events.get(0).count() >= 1_900, "" + events.get(0).count());
  }

  /** A source that says what a test wants it to. */
  private static final class MeasuredSource implements SampleSource {

    private final SourceCounters counters = new SourceCounters();
    private boolean measures = true;
    private String performance;
    private String rateTrouble;

    @Override
    public Outcome read(SampleBlock block) {
      return Outcome.NOTHING;
    }

    @Override
    public SourceFormat format() {
      return new SourceFormat(5_000, 0, 4_095, "scripted converter");
    }

    @Override
    public SourceCounters counters() {
      return counters;
    }

    @Override
    public boolean measuresRate() {
      return measures;
    }

    @Override
    public String performance() {
      return performance;
    }

    @Override
    public String rateTrouble() {
      return rateTrouble;
    }

    @Override
    public void close() {
      measures = false;
    }
  }
}
