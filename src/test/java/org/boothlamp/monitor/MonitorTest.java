package org.boothlamp.monitor;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.boothlamp.arc.ArcRule;
import org.boothlamp.calibration.CalibrationNumbers;
import org.boothlamp.judging.JudgingPlan;
import org.boothlamp.judging.JudgingRule;
import org.boothlamp.judging.Signal;
import org.boothlamp.signal.ChannelScale;
import org.boothlamp.signal.PairScale;
import org.boothlamp.signal.Polarity;
import org.boothlamp.testing.EntryCollector;
import org.boothlamp.testing.PairScript;
import org.boothlamp.testing.Plans;
import org.boothlamp.testing.ScriptedSource;
import org.boothlamp.testing.SignalRecorder;
import org.junit.jupiter.api.Test;

class MonitorTest {

  private static final int RATE = 5_000;
  private static final int BLOCK_PAIRS = 50;
  private static final JudgingPlan FILL = Plans.of(Polarity.DC_PLUS, Plans.amps(95, 125));
  private static final Assignment FIRST = new Assignment("T-01", FILL);

  private final ScriptedSource source = new ScriptedSource(RATE);
  private final SignalRecorder lamp = new SignalRecorder();
  private final EntryCollector log = new EntryCollector();
  private final WallClock noon = () -> 43_200_000L;
  private final Monitor monitor = monitor(log);

  private Monitor monitor(BoothLogSink sink) {
    PipelineSettings settings =
        new PipelineSettings(PairScript.SCALE, ArcRule.STANDARD, JudgingRule.STANDARD);
    return new Monitor(source, lamp, sink, noon, settings, FIRST);
  }

  private static PairScript script() {
    return PairScript.at(RATE);
  }

  private void runToTheEnd(Monitor monitor) {
    while (monitor.step()) {
      assertEquals(lamp.last(), monitor.status().signal());
    }
    monitor.close();
  }

  private LogEntry onlyEvent(EventKind event, LogEntry.Kind kind) {
    List<LogEntry> events = log.of(kind).stream().filter(e -> e.event == event).toList();
    assertEquals(1, events.size(), () -> kind + " of " + event);
    return events.get(0);
  }

  private LogEntry onlySegment() {
    List<LogEntry> segments = log.of(LogEntry.Kind.SEGMENT_ENDED);
    assertEquals(1, segments.size());
    return segments.get(0);
  }

  @Test
  void shouldShowAWeldFromIdleToIdle() {
    source.pairs(script().idle(1).arc(110, 23, 3).idle(1), BLOCK_PAIRS);
    runToTheEnd(monitor);
    assertEquals(List.of(Signal.IDLE, Signal.SETTLING, Signal.GREEN, Signal.IDLE), lamp.signals());
    assertEquals(110, onlySegment().figures.meanAmps, 1e-9);
    assertEquals("sampler", monitor.roleName());
  }

  @Test
  void shouldStayDarkBeforeTheFirstPairs() {
    source.silence(0.2).pairs(script().idle(0.1), BLOCK_PAIRS);
    runToTheEnd(monitor);
    assertEquals(List.of(Signal.DARK, Signal.IDLE), lamp.signals());
  }

  @Test
  void shouldBeInFaultWhenTheFirstPairsDoNotCome() {
    source.silence(3);
    runToTheEnd(monitor);
    assertEquals(List.of(Signal.DARK, Signal.FAULT), lamp.signals());
    onlyEvent(EventKind.NO_SAMPLES, LogEntry.Kind.EVENT_STARTED);
    onlyEvent(EventKind.NO_SAMPLES, LogEntry.Kind.EVENT_ENDED);
  }

  @Test
  void shouldBeInFaultAfterAQuarterSecondOfSilence() {
    source.pairs(script().idle(1).arc(110, 23, 2), BLOCK_PAIRS).silence(0.3);
    runToTheEnd(monitor);
    assertEquals(Signal.FAULT, lamp.last());
    long lastGreen =
        lamp.shown().stream()
            .filter(call -> call.signal() == Signal.GREEN)
            .mapToLong(SignalRecorder.Shown::monotonicNanos)
            .max()
            .orElseThrow();
    long fault = lamp.changes().get(lamp.changes().size() - 1).monotonicNanos();
    assertEquals(50_000_000L, fault - lastGreen);
    LogEntry began = onlyEvent(EventKind.NO_SAMPLES, LogEntry.Kind.EVENT_STARTED);
    assertEquals(250_000_000L, fault - began.monotonicNanos);
    assertEquals(43_200_000L - 250, began.wallMillis);
  }

  @Test
  void shouldBearASilenceShorterThanAQuarterSecond() {
    source
        .pairs(script().idle(1), BLOCK_PAIRS)
        .silence(0.2)
        .pairs(script().idle(1), BLOCK_PAIRS, RATE);
    runToTheEnd(monitor);
    assertEquals(List.of(Signal.IDLE), lamp.signals());
    assertEquals(List.of(), log.all());
  }

  @Test
  void shouldEndTheFaultWhenSamplesAreBack() {
    source
        .pairs(script().idle(1), BLOCK_PAIRS)
        .silence(1)
        .pairs(script().idle(1), BLOCK_PAIRS, 2 * RATE);
    runToTheEnd(monitor);
    assertEquals(List.of(Signal.IDLE, Signal.FAULT, Signal.IDLE), lamp.signals());
    LogEntry began = onlyEvent(EventKind.NO_SAMPLES, LogEntry.Kind.EVENT_STARTED);
    LogEntry ended = onlyEvent(EventKind.NO_SAMPLES, LogEntry.Kind.EVENT_ENDED);
    assertEquals(began.monotonicNanos, ended.monotonicNanos);
    assertEquals(1.01, ended.lengthSeconds, 1e-9, "a second and the block that ended it");
  }

  @Test
  void shouldCloseAnOpenSegmentAfterTwoSecondsOfSilence() {
    source.pairs(script().idle(1).arc(110, 23, 2), BLOCK_PAIRS).silence(1.9);
    while (monitor.step() && log.of(LogEntry.Kind.SEGMENT_ENDED).isEmpty()) {
      assertFalse(lamp.shown().isEmpty());
    }
    assertEquals(List.of(), log.of(LogEntry.Kind.SEGMENT_ENDED));
    source.silence(0.2);
    while (monitor.step()) {
      assertEquals(Signal.FAULT, lamp.last(), "closing the segment must not show idle");
    }
    assertEquals(SegmentEnd.GAP, onlySegment().end);
    assertEquals(2, onlySegment().figures.lengthSeconds, 1e-9);
  }

  @Test
  void shouldKeepASegmentOpenWhenOnlyTheLineWasSlow() {
    source
        .pairs(script().idle(1).arc(110, 23, 2), BLOCK_PAIRS)
        .silence(1)
        .pairs(script().arc(110, 23, 2).idle(1), BLOCK_PAIRS, 3 * RATE);
    runToTheEnd(monitor);
    assertEquals(4, onlySegment().figures.lengthSeconds, 1e-9);
    assertEquals(0, onlySegment().figures.missingSeconds, 0);
  }

  @Test
  void shouldTellASpellOfBadFramesOnce() {
    source.pairs(script().idle(1), BLOCK_PAIRS);
    for (int k = 0; k < 10; k++) {
      source
          .then(() -> source.counters().badFrames++)
          .pairs(script().idle(0.1), BLOCK_PAIRS, RATE + k * RATE / 10);
    }
    source.pairs(script().idle(2), BLOCK_PAIRS, 2 * RATE);
    source.then(() -> source.counters().badFrames += 5);
    source.pairs(script().idle(0.1), BLOCK_PAIRS, 4 * RATE);
    runToTheEnd(monitor);
    List<LogEntry> told = log.of(LogEntry.Kind.EVENT_ENDED);
    assertEquals(List.of(10L, 5L), told.stream().map(event -> event.count).toList());
    assertEquals(EventKind.BAD_FRAMES, told.get(0).event);
    assertEquals(0.9, told.get(0).lengthSeconds, 1e-9);
    assertEquals(1.0, told.get(0).startSeconds, 0.011);
  }

  @Test
  void shouldTellLostPairsAndReconnectsEachByItself() {
    source.pairs(script().idle(1), BLOCK_PAIRS);
    source.then(() -> source.counters().lostPairs += 123);
    source.then(() -> source.counters().reconnects++);
    source.pairs(script().idle(2), BLOCK_PAIRS, 2 * RATE);
    runToTheEnd(monitor);
    assertEquals(123, onlyEvent(EventKind.LOST_PAIRS, LogEntry.Kind.EVENT_ENDED).count);
    assertEquals(1, onlyEvent(EventKind.RECONNECTED, LogEntry.Kind.EVENT_ENDED).count);
  }

  @Test
  void shouldBeginAnewWhenTheFormatChanges() {
    source.pairs(script().idle(1).arc(110, 23, 2), BLOCK_PAIRS);
    source.format(10_000).pairs(PairScript.at(10_000).idle(1).arc(110, 23, 2).idle(1), 100);
    runToTheEnd(monitor);
    List<LogEntry> segments = log.of(LogEntry.Kind.SEGMENT_ENDED);
    assertEquals(2, segments.size());
    assertEquals(SegmentEnd.GAP, segments.get(0).end);
    assertEquals(2, segments.get(1).figures.lengthSeconds, 1e-9);
    LogEntry event = onlyEvent(EventKind.FORMAT_CHANGED, LogEntry.Kind.EVENT_ENDED);
    assertEquals(10_000, event.count);
  }

  @Test
  void shouldCountWhatAFullLogRefusesAndGoOn() {
    Monitor full = monitor(entry -> !log.offer(entry));
    source.pairs(script().idle(1).arc(110, 23, 3).idle(1), BLOCK_PAIRS);
    runToTheEnd(full);
    assertEquals(List.of(Signal.IDLE, Signal.SETTLING, Signal.GREEN, Signal.IDLE), lamp.signals());
    assertTrue(log.all().size() > 60, "a weld of three seconds has 60 trace points and more");
    assertEquals(log.all().size(), full.status().lostEntries());
  }

  @Test
  void shouldTakeAnotherAssignmentAtTheNextContactOnly() {
    source.pairs(script().idle(1).arc(110, 23, 2), BLOCK_PAIRS);
    source.then(() -> monitor.assign(new Assignment("T-02", null)));
    source.pairs(script().arc(110, 23, 2).idle(1).arc(110, 23, 2).idle(1), BLOCK_PAIRS, 3 * RATE);
    runToTheEnd(monitor);
    assertEquals(
        List.of("T-01", "T-02"),
        log.of(LogEntry.Kind.SEGMENT_ENDED).stream().map(s -> s.assignment.trainee()).toList());
    assertEquals(
        List.of("T-01", "T-02"),
        log.of(LogEntry.Kind.SEGMENT_STARTED).stream().map(s -> s.assignment.trainee()).toList());
    assertEquals("T-02", monitor.status().assignment().trainee());
  }

  @Test
  void shouldSayInItsStatusWhatItSees() {
    assertEquals(Signal.DARK, monitor.status().signal());
    source.pairs(script().idle(1).arc(110, 23, 2), BLOCK_PAIRS);
    source.then(
        () -> {
          assertEquals(110, monitor.status().amps(), 1e-9);
          assertEquals(23, monitor.status().volts(), 1e-9);
          assertEquals(2, monitor.status().arcSeconds(), 1e-9);
          assertEquals(3, monitor.status().sourceSeconds(), 1e-9);
          assertEquals(Signal.GREEN, monitor.status().signal());
        });
    source.pairs(script().idle(1), BLOCK_PAIRS, 3 * RATE);
    runToTheEnd(monitor);
    assertTrue(Double.isNaN(monitor.status().amps()));
    assertEquals(0, monitor.status().arcSeconds(), 0);
  }

  @Test
  void shouldCloseTheRunningSegmentOnceAndLeaveTheDevicesToTheirOwner() {
    source.pairs(script().idle(1).arc(110, 23, 2), BLOCK_PAIRS);
    runToTheEnd(monitor);
    assertEquals(SegmentEnd.STOPPED, onlySegment().end);
    monitor.close();
    assertEquals(SegmentEnd.STOPPED, onlySegment().end);
    assertFalse(lamp.isClosed());
    assertFalse(source.isClosed());
  }

  @Test
  void shouldTellSpellsThatAreOpenWhenItCloses() {
    source.pairs(script().idle(1), BLOCK_PAIRS);
    source.then(() -> source.counters().lostPairs += 7);
    source.pairs(script().idle(0.1), BLOCK_PAIRS, RATE).silence(0.5);
    runToTheEnd(monitor);
    assertEquals(7, onlyEvent(EventKind.LOST_PAIRS, LogEntry.Kind.EVENT_ENDED).count);
    assertEquals(
        0.5, onlyEvent(EventKind.NO_SAMPLES, LogEntry.Kind.EVENT_ENDED).lengthSeconds, 1e-9);
  }

  /** At least every 0.1 s, or the lamp would take the monitor for dead. */
  @Test
  void shouldRefreshTheLampWithEveryStep() {
    source.pairs(script().idle(1), 500).silence(1).pairs(script().idle(1), 500, 2 * RATE);
    runToTheEnd(monitor);
    long last = lamp.shown().get(0).monotonicNanos();
    for (SignalRecorder.Shown call : lamp.shown()) {
      assertTrue(call.monotonicNanos() - last <= 100_000_000L);
      last = Math.max(last, call.monotonicNanos());
    }
  }

  @Test
  void shouldMeasureByAnotherScaleFromTheNextArcOnAndByItsPlanTogether() {
    PairScale doubled =
        new PairScale(twice(PairScript.SCALE.current()), PairScript.SCALE.voltage());
    PipelineSettings next =
        new PipelineSettings(PairScript.SCALE, ArcRule.STANDARD, JudgingRule.STANDARD)
            .scaledBy(doubled, new CalibrationNumbers(4, 0));
    Assignment other = new Assignment("T-02", FILL);
    source.pairs(script().idle(1).arc(50, 23, 1), BLOCK_PAIRS);
    source.then(() -> monitor.measureBy(next, other));
    source.pairs(script().arc(50, 23, 1).idle(1).arc(50, 23, 2).idle(1), BLOCK_PAIRS, 2L * RATE);
    runToTheEnd(monitor);

    List<LogEntry> started = log.of(LogEntry.Kind.SEGMENT_STARTED);
    List<LogEntry> ended = log.of(LogEntry.Kind.SEGMENT_ENDED);
    assertEquals(2, ended.size());
    assertEquals(50, ended.get(0).figures.meanAmps, 0.1);
    assertEquals(CalibrationNumbers.NONE, started.get(0).calibrations);
    assertEquals("T-01", started.get(0).assignment.trainee());
    assertEquals(100, ended.get(1).figures.meanAmps, 0.2);
    assertEquals(new CalibrationNumbers(4, 0), started.get(1).calibrations);
    assertEquals("T-02", started.get(1).assignment.trainee());
    assertEquals(4, started.get(1).startSeconds, 0.02, "the clock of the source goes on");
  }

  private static ChannelScale twice(ChannelScale scale) {
    return new ChannelScale(2 * scale.unitsPerCount(), scale.zeroCount());
  }

  @Test
  void shouldGoOnWithThePipelineIfOnlyTheUncertaintyChanges() {
    PipelineSettings same =
        new PipelineSettings(PairScript.SCALE, ArcRule.STANDARD, JudgingRule.STANDARD);
    source.pairs(script().idle(1), BLOCK_PAIRS);
    source.then(() -> monitor.measureBy(same, new Assignment("T-02", FILL)));
    source.pairs(script().arc(110, 23, 2).idle(1), BLOCK_PAIRS, RATE);
    runToTheEnd(monitor);
    assertEquals("T-02", onlySegment().assignment.trainee());
    assertEquals("T-02", monitor.assigned().trainee());
  }
}
