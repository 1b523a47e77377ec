package org.boothlamp.monitor;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.boothlamp.arc.ArcRule;
import org.boothlamp.judging.JudgingRule;
import org.boothlamp.judging.Signal;
import org.boothlamp.testing.EntryCollector;
import org.boothlamp.testing.KnownRecording;
import org.boothlamp.testing.SignalRecorder;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Recordings that come at another pace than they say: faults that take a clock to see. */
class ClockFaultTest {

  private static final int BLOCK_PAIRS = 50;
  private static final long START_NANOS = 9_000_000_000L;

  private final SignalRecorder lamp = new SignalRecorder();
  private final EntryCollector log = new EntryCollector();

  /** Plays in blocks of 10 ms; from a pair on each takes another time. */
  private static final class OffPace implements SampleSource {
    private final KnownRecording recording;
    private final int soundPairs;
    private final double pace;
    private final SourceFormat format;
    private final SourceCounters counters = new SourceCounters();
    private int next;

    OffPace(KnownRecording recording, int soundPairs, double pace) {
      this.recording = recording;
      this.soundPairs = soundPairs;
      this.pace = pace;
      int rate = recording.pairsPerSecond();
      format = new SourceFormat(rate, Short.MIN_VALUE, Short.MAX_VALUE, "off pace");
    }

    @Override
    public Outcome read(SampleBlock block) {
      block.count = Math.min(BLOCK_PAIRS, recording.current().length - next);
      System.arraycopy(recording.current(), next, block.current, 0, block.count);
      System.arraycopy(recording.voltage(), next, block.voltage, 0, block.count);
      block.firstIndex = next;
      next += block.count;
      double off = Math.max(0, next - soundPairs);
      double seconds = (Math.min(next, soundPairs) + off / pace) / recording.pairsPerSecond();
      block.monotonicNanos = START_NANOS + (long) (seconds * 1e9);
      return block.count > 0 ? Outcome.PAIRS : Outcome.END;
    }

    @Override
    public SourceFormat format() {
      return format;
    }

    @Override
    public SourceCounters counters() {
      return counters;
    }

    @Override
    public void close() {
      next = recording.current().length;
    }
  }

  private void play(String name, double soundSeconds, double pace) {
    KnownRecording recording = KnownRecording.load(name);
    int sound = (int) (soundSeconds * recording.pairsPerSecond());
    Monitor monitor =
        new Monitor(
            new OffPace(recording, sound, pace),
            lamp,
            log,
            () -> 0,
            new PipelineSettings(recording.scale(), ArcRule.STANDARD, JudgingRule.STANDARD),
            new Assignment("T-01", recording.plan()));
    while (monitor.step()) {
      assertEquals(lamp.last(), monitor.status().signal());
    }
    monitor.close();
  }

  private double faultSeconds() {
    return lamp.changes().stream()
            .filter(change -> change.signal() == Signal.FAULT)
            .mapToLong(SignalRecorder.Shown::monotonicNanos)
            .min()
            .orElseThrow()
        / 1e9;
  }

  private void assertNothingJudgedAfter(double seconds) {
    List<Signal> judged = List.of(Signal.GREEN, Signal.AMBER, Signal.RED);
    assertTrue(
        lamp.changes().stream()
            .filter(change -> change.monotonicNanos() / 1e9 > seconds)
            .noneMatch(change -> judged.contains(change.signal())));
  }

  /** Visible once half a second has come at the wrong pace. */
  @ParameterizedTest
  @CsvSource({
    "stick-five-runs, 0.8",
    "stick-five-runs, 0.93",
    "stick-five-runs, 1.1",
    "short-arc-four-runs, 0.9",
    "short-arc-four-runs, 1.3",
    "tacks, 0.7",
    "tacks, 1.07",
    "tig-three-runs, 0.92",
    "tig-three-runs, 2"
  })
  void shouldFindAWrongSampleRate(String name, double pace) {
    double sound = 5;
    play(name, sound, pace);
    LogEntry began = log.of(LogEntry.Kind.EVENT_STARTED).get(0);
    assertEquals(EventKind.SAMPLE_RATE, began.event);
    double found = faultSeconds() - START_NANOS / 1e9 - sound;
    assertTrue(found <= 0.65, found + " s");
    assertNothingJudgedAfter(faultSeconds());
    assertEquals(1, log.of(LogEntry.Kind.EVENT_ENDED).size(), "open until the end");
  }

  /** Visible once thirty seconds have come off pace; the figures are wrong by little. */
  @ParameterizedTest
  @CsvSource({
    "stick-five-runs, 0.99", "stick-five-runs, 1.007",
    "short-arc-four-runs, 0.98", "short-arc-four-runs, 1.02",
    "tacks, 0.985", "tacks, 1.02",
    "tig-three-runs, 0.993", "tig-three-runs, 1.03"
  })
  void shouldFindADriftingClock(String name, double pace) {
    play(name, 0, pace);
    LogEntry began = log.of(LogEntry.Kind.EVENT_STARTED).get(0);
    assertEquals(EventKind.CLOCK_DRIFT, began.event);
    assertEquals(31, faultSeconds() - START_NANOS / 1e9, 1.5);
    assertNothingJudgedAfter(faultSeconds());
  }

  @ParameterizedTest
  @CsvSource({"stick-five-runs, 1", "short-arc-four-runs, 1.003", "tig-three-runs, 0.997"})
  void shouldBearASoundClock(String name, double pace) {
    play(name, 0, pace);
    assertEquals(List.of(), log.of(LogEntry.Kind.EVENT_ENDED));
  }
}
