package org.boothlamp.monitor;

import static org.junit.jupiter.api.Assertions.assertAll;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import java.util.ArrayList;
import java.util.List;
import org.boothlamp.judging.Level;
import org.boothlamp.judging.Signal;
import org.boothlamp.procedure.Quantity;
import org.boothlamp.procedure.Window;
import org.boothlamp.testing.KnownRecording;
import org.boothlamp.testing.KnownRecording.Truth;
import org.boothlamp.testing.PipelineRun;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.FieldSource;

/** What the pipeline finds in recordings made by a simulator that shares no code with it. */
class RecordingsAgainstTruthTest {

  private static final List<String> RECORDINGS = KnownRecording.NAMES;

  @ParameterizedTest
  @FieldSource("RECORDINGS")
  void shouldFindEverySegmentAndInventNone(String name) {
    KnownRecording recording = KnownRecording.load(name);
    List<LogEntry> found = PipelineRun.of(recording).entries().of(LogEntry.Kind.SEGMENT_ENDED);
    assertEquals(recording.segments().size(), found.size());
    for (int i = 0; i < found.size(); i++) {
      assertMatches(recording.segments().get(i), found.get(i).figures);
    }
  }

  private static void assertMatches(Truth truth, SegmentFigures found) {
    assertAll(
        () -> assertEquals(truth.startSeconds(), found.startSeconds, 0.020),
        () -> assertEquals(truth.endSeconds(), found.startSeconds + found.lengthSeconds, 0.020),
        () -> assertWithin(0.01, truth.meanAmps(), found.meanAmps),
        () -> assertWithin(0.01, truth.meanVolts(), found.meanVolts),
        () -> assertWithin(0.01, truth.rmsAmps(), found.rmsAmps),
        () -> assertWithin(0.01, truth.rmsVolts(), found.rmsVolts),
        () -> assertWithin(0.01, truth.energyJoules(), found.energyJoules),
        () ->
            assertEquals(truth.shortCircuits(), found.shortCircuits, 0.03 * truth.shortCircuits()),
        () -> assertEquals(0, found.arcOuts),
        () -> assertEquals(0, found.missingSeconds));
  }

  private static void assertWithin(double share, double expected, double actual) {
    assertEquals(expected, actual, share * expected);
  }

  @ParameterizedTest
  @FieldSource("RECORDINGS")
  void shouldFindEveryTouchAndInventNone(String name) {
    KnownRecording recording = KnownRecording.load(name);
    List<LogEntry> found = PipelineRun.of(recording).entries().of(LogEntry.Kind.TOUCH);
    assertEquals(recording.touches().size(), found.size());
    for (int i = 0; i < found.size(); i++) {
      LogEntry touch = found.get(i);
      Truth truth = recording.touches().get(i);
      assertEquals(truth.startSeconds(), touch.startSeconds, 0.020);
      assertEquals(truth.endSeconds(), touch.startSeconds + touch.lengthSeconds, 0.020);
      assertFalse(touch.stuck);
    }
  }

  /**
   * The lamp held against a calculation of its own, pair by pair in floating point: mean of the
   * last second, zone by zone, the worst level of the last half second.
   */
  @ParameterizedTest
  @FieldSource("RECORDINGS")
  void shouldShowTheLevelThatPlainArithmeticGives(String name) {
    KnownRecording recording = KnownRecording.load(name);
    PipelineRun run = PipelineRun.of(recording);
    for (LogEntry segment : run.entries().of(LogEntry.Kind.SEGMENT_ENDED)) {
      long start = Math.round(segment.figures.startSeconds * 10_000);
      long end = start + Math.round(segment.figures.lengthSeconds * 10_000);
      List<Level> judged = new ArrayList<>();
      for (long at = start + 10_000; at + 1_000 <= end; at += 1_000) {
        judged.add(plainLevel(recording, at));
        Signal expected = Signal.of(worstOfHalfSecond(judged));
        assertEquals(expected, shownAt(run, (at + 50) / 1e4), name + " at " + at / 1e4 + " s");
      }
    }
  }

  /** {@code at} in units of 0.1 ms. */
  private static Level plainLevel(KnownRecording recording, long at) {
    int until = (int) (at * recording.pairsPerSecond() / 10_000);
    // The first slot of a segment may be partly arc: from the second on there are 99 in the first
    // average.
    boolean first = at - 10_000 == segmentStart(recording, at);
    int from = until - recording.pairsPerSecond() + (first ? recording.pairsPerSecond() / 100 : 0);
    double amps = 0;
    double volts = 0;
    for (int k = from; k < until; k++) {
      amps += Math.abs(recording.scale().current().toUnits(recording.current()[k]));
      volts += Math.abs(recording.scale().voltage().toUnits(recording.voltage()[k]));
    }
    Level ofAmps = zone(recording, Quantity.AMPS, amps / (until - from));
    return ofAmps.worse(zone(recording, Quantity.VOLTS, volts / (until - from)));
  }

  private static long segmentStart(KnownRecording recording, long at) {
    long start = -1;
    for (Truth truth : recording.segments()) {
      long slotStart = (long) Math.floor(truth.startSeconds() * 100 + 1e-6) * 100;
      if (slotStart < at) {
        start = slotStart;
      }
    }
    return start;
  }

  private static Level zone(KnownRecording recording, Quantity quantity, double average) {
    Window window = recording.procedure().pass("run").window(quantity);
    double band = 0.1 * (window.high() - window.low());
    if (average < window.low() || average > window.high()) {
      return Level.RED;
    }
    boolean near = average < window.low() + band || average > window.high() - band;
    return near ? Level.AMBER : Level.GREEN;
  }

  /** A better level has held for 0.5 s with its sixth judgement in a row, 0.1 s apart. */
  private static Level worstOfHalfSecond(List<Level> judged) {
    Level worst = Level.GREEN;
    for (int i = Math.max(0, judged.size() - 6); i < judged.size(); i++) {
      worst = worst.worse(judged.get(i));
    }
    return worst;
  }

  private static Signal shownAt(PipelineRun run, double seconds) {
    Signal signal = Signal.IDLE;
    for (PipelineRun.Shown change : run.shown()) {
      if (change.seconds() <= seconds) {
        signal = change.signal();
      }
    }
    return signal;
  }
}
