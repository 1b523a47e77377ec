package org.boothlamp.monitor;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.stream.DoubleStream;
import java.util.stream.Stream;
import org.boothlamp.arc.ArcRule;
import org.boothlamp.judging.JudgingRule;
import org.boothlamp.judging.Signal;
import org.boothlamp.testing.EntryCollector;
import org.boothlamp.testing.KnownRecording;
import org.boothlamp.testing.SignalRecorder;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

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

  private void assertNothingShownAsJudgedSince(double found) {
    double seconds = found + START_NANOS / 1e9;
    List<Signal> judged = List.of(Signal.GREEN, Signal.AMBER, Signal.RED);
    assertTrue(
        lamp.changes().stream()
            .filter(change -> change.monotonicNanos() / 1e9 > seconds)
            .noneMatch(change -> judged.contains(change.signal())));
  }

  private static Stream<Arguments> everyRecordingAt(double... paces) {
    return KnownRecording.NAMES.stream()
        .flatMap(name -> DoubleStream.of(paces).mapToObj(pace -> Arguments.of(name, pace)));
  }

  private static Stream<Arguments> wrongRates() {
    return everyRecordingAt(0.5, 0.7, 0.8, 0.9, 0.93, 1.07, 1.1, 1.3, 2, 4);
  }

  private static Stream<Arguments> drifts() {
    return everyRecordingAt(0.975, 0.985, 0.993, 1.007, 1.015, 1.025);
  }

  /** The paces change inside a run. */
  @ParameterizedTest
  @MethodSource("wrongRates")
  void shouldFindAWrongSampleRateWithinHalfASecond(String name, double pace) {
    double sound = new FaultBench(KnownRecording.load(name)).midArc();
    play(name, sound, pace);
    double found = foundSeconds();
    assertTrue(found - sound <= 0.5, (found - sound) + " s");
    assertOneEvent(EventKind.SAMPLE_RATE, sound - 0.25, sound + 0.1);
    assertNothingShownAsJudgedSince(found);
    assertNothingJudgedSince(sound);
  }

  /** The smaller it is the longer it takes; what was judged meanwhile in the run is taken back. */
  @ParameterizedTest
  @MethodSource("drifts")
  void shouldFindADriftingClock(String name, double pace) {
    play(name, 0, pace);
    double off = Math.abs(pace - 1);
    double found = foundSeconds();
    assertTrue(found <= (off > 0.02 ? 2.2 : off > 0.01 ? 9 : 33), found + " s");
    assertOneEvent(EventKind.CLOCK_DRIFT, 0, 0.1);
    assertNothingShownAsJudgedSince(found);
    assertNothingJudgedOfRunsThatEndAfter(found * pace);
  }

  private double foundSeconds() {
    return faultSeconds() - START_NANOS / 1e9;
  }

  /** Open until the end. */
  private void assertOneEvent(EventKind kind, double earliest, double latest) {
    List<LogEntry> began = log.of(LogEntry.Kind.EVENT_STARTED);
    List<LogEntry> ended = log.of(LogEntry.Kind.EVENT_ENDED);
    assertEquals(List.of(kind), began.stream().map(entry -> entry.event).toList());
    assertEquals(List.of(kind), ended.stream().map(entry -> entry.event).toList());
    assertTrue(began.get(0).startSeconds >= earliest, "begins " + began.get(0).startSeconds);
    assertTrue(began.get(0).startSeconds <= latest, "begins " + began.get(0).startSeconds);
    assertEquals(began.get(0).startSeconds, ended.get(0).startSeconds);
    assertTrue(ended.get(0).lengthSeconds > 1, "it has an end");
  }

  /** The first second of a segment is not judged by anybody. */
  private void assertNothingJudgedSince(double soundSeconds) {
    for (LogEntry segment : log.of(LogEntry.Kind.SEGMENT_ENDED)) {
      SegmentFigures figures = segment.figures;
      if (figures.startSeconds + figures.lengthSeconds > soundSeconds) {
        double sound = Math.max(0, soundSeconds - figures.startSeconds - 1);
        assertTrue(judged(figures) <= sound + 0.02, judged(figures) + " s, sound " + sound);
      }
    }
  }

  private void assertNothingJudgedOfRunsThatEndAfter(double seconds) {
    for (LogEntry segment : log.of(LogEntry.Kind.SEGMENT_ENDED)) {
      SegmentFigures figures = segment.figures;
      if (figures.startSeconds + figures.lengthSeconds > seconds) {
        assertEquals(0, judged(figures), 0.02);
      }
    }
  }

  private static double judged(SegmentFigures figures) {
    return figures.greenSeconds + figures.amberSeconds + figures.redSeconds;
  }

  private static Stream<Arguments> soundPaces() {
    return everyRecordingAt(0.997, 1, 1.003);
  }

  @ParameterizedTest
  @MethodSource("soundPaces")
  void shouldBearASoundClock(String name, double pace) {
    play(name, 0, pace);
    assertEquals(List.of(), log.of(LogEntry.Kind.EVENT_ENDED));
  }
}
