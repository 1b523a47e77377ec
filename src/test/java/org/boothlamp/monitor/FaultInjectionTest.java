package org.boothlamp.monitor;

import static org.junit.jupiter.api.Assertions.assertAll;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Stream;
import org.boothlamp.health.HealthFault;
import org.boothlamp.judging.Signal;
import org.boothlamp.testing.FaultInjector;
import org.boothlamp.testing.KnownRecording;
import org.boothlamp.testing.PairScript;
import org.boothlamp.testing.PipelineRun;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.FieldSource;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Every fault of the sensors that shows in the pairs, put into every recording: its own name, the
 * lamp in fault within half a second of the first moment at which it can be seen, and nothing
 * judged from then on. When that is, each case says. Three faults show only under a condition: the
 * clamp's zero and noise while no current flows, and a clamp that was never around the lead once
 * the arc's volts go up and down, which those of a steady TIG arc do not; such an arc is no
 * segment, and the lamp stays idle.
 */
class FaultInjectionTest {

  private static final double MOST_SECONDS = 0.5;
  private static final double SLOT = 0.01;

  private static final List<String> RECORDINGS = KnownRecording.NAMES;

  /** Nobody writes to the counts of a recording. */
  private static final Map<String, KnownRecording> LOADED = new HashMap<>();

  private static Stream<Arguments> everyFaultInEveryRecording() {
    return RECORDINGS.stream()
        .flatMap(
            name ->
                InjectedFaults.ALL.stream()
                    .map(fault -> Arguments.of(name, fault.kind(), fault.severity(), fault)));
  }

  @ParameterizedTest(name = "{0}: {1}, {2}")
  @MethodSource("everyFaultInEveryRecording")
  void shouldNameTheFaultWithinHalfASecondAndJudgeNothingGreen(
      String name, EventKind kind, String severity, InjectedFaults.Fault fault) {
    KnownRecording recording = LOADED.computeIfAbsent(name, KnownRecording::load);
    FaultBench.Injected injected = fault.injection().into(new FaultBench(recording));
    PipelineRun run = play(recording, injected);
    List<LogEntry> began = run.entries().of(LogEntry.Kind.EVENT_STARTED);
    assertFalse(began.isEmpty(), "no fault was found");
    assertEquals(kind, began.get(0).event);
    double found = firstFault(run);
    double visible = injected.visibleSeconds();
    assertAll(
        () -> assertTrue(found <= visible + MOST_SECONDS, (found - visible) + " s late"),
        () -> assertTrue(began.get(0).startSeconds >= visible - 0.2, "begins before it is there"),
        () -> assertTrue(began.get(0).startSeconds <= found, "begins after it is found"),
        () -> assertEveryEventEnds(run),
        () -> assertNothingShownAsJudged(run, found, injected.endSeconds()),
        () -> assertNothingJudgedSince(run, visible, injected.endSeconds()));
  }

  /** Each with the start it was told with, and not before it was found. */
  private static void assertEveryEventEnds(PipelineRun run) {
    Map<EventKind, LogEntry> open = new HashMap<>();
    for (LogEntry entry : run.entries().all()) {
      if (entry.kind == LogEntry.Kind.EVENT_STARTED) {
        assertNull(open.put(entry.event, entry), "begins twice: " + entry.event);
      } else if (entry.kind == LogEntry.Kind.EVENT_ENDED) {
        LogEntry began = open.remove(entry.event);
        assertEquals(began.startSeconds, entry.startSeconds);
        assertTrue(entry.lengthSeconds > 0, entry.event + " took no time");
      }
    }
    assertEquals(Map.of(), open, "without an end");
  }

  private static PipelineRun play(KnownRecording recording, FaultBench.Injected injected) {
    PipelineRun run =
        new PipelineRun(injected.scale(), recording.pairsPerSecond(), recording.plan());
    for (PairScript.Part part : injected.parts()) {
      run.send(part.current(), part.voltage(), part.firstIndex());
    }
    run.pipeline().close(SegmentEnd.STOPPED);
    return run;
  }

  private static double firstFault(PipelineRun run) {
    for (PipelineRun.Shown shown : run.shown()) {
      if (shown.signal() == Signal.FAULT) {
        return shown.seconds();
      }
    }
    throw new AssertionError("the lamp never was in fault");
  }

  private static void assertNothingShownAsJudged(PipelineRun run, double from, double until) {
    Set<Signal> judged = Set.of(Signal.GREEN, Signal.AMBER, Signal.RED);
    for (PipelineRun.Shown shown : run.shown()) {
      if (shown.seconds() >= from && shown.seconds() < until) {
        assertFalse(
            judged.contains(shown.signal()), shown.signal() + " at " + shown.seconds() + " s");
      }
    }
  }

  /** The first second of a segment is not judged by anybody. */
  private static void assertNothingJudgedSince(PipelineRun run, double since, double until) {
    for (LogEntry segment : run.entries().of(LogEntry.Kind.SEGMENT_ENDED)) {
      SegmentFigures figures = segment.figures;
      double end = figures.startSeconds + figures.lengthSeconds;
      if (end > since && figures.startSeconds < until && end <= until + 2 * SLOT) {
        double judged = figures.greenSeconds + figures.amberSeconds + figures.redSeconds;
        double sound = Math.max(0, since - figures.startSeconds - 1);
        assertTrue(
            judged <= sound + SLOT + 1e-9,
            judged + " s judged of the run at " + figures.startSeconds + " s, sound: " + sound);
      }
    }
  }

  /** The other two take a clock: {@link ClockFaultTest} puts them into the same recordings. */
  @ParameterizedTest
  @EnumSource(
      mode = EnumSource.Mode.EXCLUDE,
      names = {"SAMPLE_RATE", "CLOCK_DRIFT"})
  void shouldTryEveryFaultAtSeveralSeverities(HealthFault fault) {
    long severities =
        InjectedFaults.ALL.stream()
            .filter(injected -> injected.kind() == EventKind.of(fault))
            .count();
    assertTrue(severities >= 3, fault + " at " + severities + " severities");
  }

  @ParameterizedTest
  @FieldSource("RECORDINGS")
  void shouldFindNoFaultInASoundRecording(String name) {
    PipelineRun run = PipelineRun.of(KnownRecording.load(name));
    assertEquals(List.of(), run.entries().of(LogEntry.Kind.EVENT_STARTED));
    assertTrue(run.shown().stream().noneMatch(shown -> shown.signal() == Signal.FAULT));
  }

  /** The lead is beside the clamp from the first run on. */
  @ParameterizedTest
  @FieldSource("RECORDINGS")
  void shouldJudgeNothingWhereTheClampWasNeverAroundTheLead(String name) {
    KnownRecording recording = KnownRecording.load(name);
    FaultBench bench = new FaultBench(recording);
    short[] nothing =
        FaultInjector.faded(recording.current(), 0, 0.002, 0.8 / bench.ampsPerCount());
    PipelineRun run = play(recording, bench.changed(nothing, recording.voltage(), 0));
    Set<EventKind> found = new HashSet<>();
    run.entries().of(LogEntry.Kind.EVENT_STARTED).forEach(event -> found.add(event.event));
    boolean steady = name.startsWith("tig");
    assertEquals(steady ? Set.of() : Set.of(EventKind.VOLTS_WITHOUT_AMPS), found);
    assertEquals(List.of(), run.entries().of(LogEntry.Kind.SEGMENT_ENDED));
    assertNothingShownAsJudged(run, 0, Double.POSITIVE_INFINITY);
  }

  @ParameterizedTest
  @FieldSource("RECORDINGS")
  void shouldWeighRightWithAZeroThatMovedInsideItsBand(String name) {
    KnownRecording recording = KnownRecording.load(name);
    FaultBench bench = new FaultBench(recording);
    for (double amps : new double[] {-2.7, -1, 2.7}) {
      double counts = amps / bench.ampsPerCount();
      short[] moved = FaultInjector.added(recording.current(), 0, k -> counts);
      PipelineRun run = play(recording, bench.changed(moved, recording.voltage(), 0));
      assertEquals(List.of(), run.entries().of(LogEntry.Kind.EVENT_STARTED));
      List<LogEntry> segments = run.entries().of(LogEntry.Kind.SEGMENT_ENDED);
      assertEquals(recording.segments().size(), segments.size());
      for (int k = 0; k < segments.size(); k++) {
        double truth = recording.segments().get(k).meanAmps();
        assertEquals(truth, segments.get(k).figures.meanAmps, 0.01 * truth);
      }
    }
  }
}
