package org.boothlamp.monitor;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.boothlamp.judging.JudgingPlan;
import org.boothlamp.judging.Side;
import org.boothlamp.judging.Signal;
import org.boothlamp.procedure.Quantity;
import org.boothlamp.signal.Polarity;
import org.boothlamp.testing.PairScript;
import org.boothlamp.testing.PipelineRun;
import org.boothlamp.testing.Plans;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class PipelineTest {

  private static final int RATE = 5_000;
  private static final JudgingPlan FILL =
      Plans.of(Polarity.DC_PLUS, Plans.amps(95, 125), Plans.volts(20, 26));

  private PipelineRun run = new PipelineRun(PairScript.SCALE, RATE, FILL);

  private static PairScript script() {
    return PairScript.at(RATE);
  }

  private LogEntry onlyEntry(LogEntry.Kind kind) {
    List<LogEntry> entries = run.entries().of(kind);
    assertEquals(1, entries.size(), () -> "entries of kind " + kind);
    return entries.get(0);
  }

  private SegmentFigures segment() {
    return onlyEntry(LogEntry.Kind.SEGMENT_ENDED).figures;
  }

  private List<Signal> signals() {
    return run.shown().stream().map(PipelineRun.Shown::signal).toList();
  }

  @Test
  void shouldGiveTheFiguresOfASegmentWithAnArcOut() {
    script().idle(1).arc(110, 23, 3).off(0.2).arc(110, 23, 2).idle(1).sendTo(run);
    SegmentFigures found = segment();
    assertEquals(1, found.startSeconds, 1e-9);
    assertEquals(5.2, found.lengthSeconds, 1e-9);
    assertEquals(110, found.meanAmps, 1e-9);
    assertEquals(23, found.meanVolts, 1e-9);
    assertEquals(110, found.rmsAmps, 1e-6);
    assertEquals(23, found.rmsVolts, 1e-6);
    assertEquals(2_530, found.meanWatts, 1e-9);
    assertEquals(2_530 * 5, found.energyJoules, 1e-6);
    assertEquals(Polarity.DC_PLUS, found.polarity);
    assertEquals(1, found.arcOuts);
    assertEquals(0, found.shortCircuits);
    assertEquals(0, found.missingSeconds, 0);
    assertEquals(SegmentEnd.ARC_OFF, onlyEntry(LogEntry.Kind.SEGMENT_ENDED).end);
  }

  /** Arc begins and ends in the middle of a slot. */
  @Test
  void shouldKeepMeansAndEnergyTrueWhereTheArcDoesNotKeepToSlots() {
    script().idle(1.0048).arc(110, 23, 2.0032).idle(1).sendTo(run);
    SegmentFigures found = segment();
    assertEquals(1.0048, found.startSeconds, 0.02);
    assertEquals(3.008, found.startSeconds + found.lengthSeconds, 0.02);
    assertEquals(110, found.meanAmps, 1e-9);
    assertEquals(23, found.meanVolts, 1e-9);
    assertEquals(2_530 * 2.0032, found.energyJoules, 1e-6);
  }

  @Test
  void shouldAddUpJudgedSecondsToTheLength() {
    script()
        .idle(1)
        .arc(110, 23, 3)
        .off(0.15)
        .arc(123.5, 23, 2)
        .gap(0.1)
        .arc(140, 23, 2.37)
        .off(0.29)
        .arc(110, 23, 1.5)
        .idle(1)
        .sendTo(run);
    SegmentFigures f = segment();
    double sum =
        f.greenSeconds + f.amberSeconds + f.redSeconds + f.settlingSeconds + f.faultSeconds;
    assertEquals(f.lengthSeconds, sum, 1e-9);
    assertEquals(2, f.settlingSeconds, 0.03, "at the start and after the fault");
    assertEquals(0.55, f.faultSeconds, 0.03, "until a tenth of half a second is missing");
    assertEquals(0.1, f.missingSeconds, 1e-9);
    assertTrue(f.greenSeconds > 2 && f.amberSeconds > 0.5 && f.redSeconds > 1.5);
  }

  @Test
  void shouldShowIdleSettlingLevelIdle() {
    script().idle(1).arc(110, 23, 2).idle(1).sendTo(run);
    assertEquals(List.of(Signal.SETTLING, Signal.GREEN, Signal.IDLE), signals());
    assertEquals(1.07, run.shown().get(0).seconds(), 1e-6);
    assertEquals(2.0, run.shown().get(1).seconds(), 1e-6);
    assertEquals(3.31, run.shown().get(2).seconds(), 1e-6);
  }

  @Test
  void shouldSettleForeverWithoutAProcedure() {
    run = new PipelineRun(PairScript.SCALE, RATE, null);
    script().idle(1).arc(110, 23, 10).idle(1).sendTo(run);
    assertEquals(List.of(Signal.SETTLING, Signal.IDLE), signals());
    assertEquals(10, segment().settlingSeconds, 1e-9);
  }

  @ParameterizedTest
  @ValueSource(doubles = {0.01, 0.03, 0.05, 0.08, 0.1})
  void shouldEndNoExcursionAfterItsSegment(double comesBack) {
    script().idle(1).arc(125.5, 23, 3).arc(20, 23, comesBack).idle(1).sendTo(run);
    LogEntry excursion = onlyEntry(LogEntry.Kind.EXCURSION);
    double end = segment().startSeconds + segment().lengthSeconds;
    assertEquals(end, excursion.startSeconds + excursion.lengthSeconds, 0.1);
    assertTrue(excursion.startSeconds + excursion.lengthSeconds <= end + 1e-9);
  }

  @Test
  void shouldTellAnExcursionWithItsTimes() {
    script().idle(1).arc(110, 23, 3).arc(170, 23, 2).arc(110, 23, 3).idle(1).sendTo(run);
    LogEntry excursion = onlyEntry(LogEntry.Kind.EXCURSION);
    assertEquals(Quantity.AMPS, excursion.quantity);
    assertEquals(Side.HIGH, excursion.side);
    // the average passes 125 A after a quarter of the step, and comes back the same way
    assertEquals(4.3, excursion.startSeconds, 1e-9);
    assertEquals(6.8, excursion.startSeconds + excursion.lengthSeconds, 1e-9);
    assertEquals(170, excursion.worst, 1e-9);
  }

  @Test
  void shouldEndAnOpenExcursionWithTheSegment() {
    script().idle(1).arc(110, 23, 2).arc(170, 23, 2).idle(1).sendTo(run);
    LogEntry excursion = onlyEntry(LogEntry.Kind.EXCURSION);
    assertEquals(5, excursion.startSeconds + excursion.lengthSeconds, 1e-9);
  }

  @Test
  void shouldPutTheLampInFaultWhileTheCurrentRunsTheWrongWay() {
    script().idle(1).arc(-110, -23, 3).idle(1).sendTo(run);
    assertEquals(List.of(Signal.SETTLING, Signal.FAULT, Signal.IDLE), signals());
    LogEntry began = onlyEntry(LogEntry.Kind.EVENT_STARTED);
    LogEntry ended = onlyEntry(LogEntry.Kind.EVENT_ENDED);
    assertEquals(EventKind.WRONG_POLARITY, began.event);
    assertEquals(EventKind.WRONG_POLARITY, ended.event);
    assertEquals(1, began.startSeconds, 1e-9);
    assertEquals(1, ended.startSeconds, 1e-9);
    assertEquals(3, ended.lengthSeconds, 1e-9, "to the end of the segment, not of the bridge");
    assertEquals(3, segment().faultSeconds, 1e-9);
    assertEquals(Polarity.DC_MINUS, segment().polarity);
  }

  @Test
  void shouldEndTheFaultWhenTheLeadsAreTurnedInsideASegment() {
    script().idle(1).arc(-110, -23, 3).off(0.1).arc(110, 23, 4).idle(1).sendTo(run);
    assertEquals(Signal.FAULT, signals().get(1));
    assertTrue(signals().contains(Signal.GREEN), () -> signals().toString());
    assertEquals(1, run.entries().of(LogEntry.Kind.EVENT_ENDED).size());
  }

  @Test
  void shouldTellATouchAndForgetItsSegment() {
    script().idle(1).arc(180, 2, 0.04).idle(1).sendTo(run);
    LogEntry touch = onlyEntry(LogEntry.Kind.TOUCH);
    assertEquals(1, touch.startSeconds, 1e-9);
    assertEquals(0.04, touch.lengthSeconds, 1e-9);
    assertFalse(touch.stuck);
    onlyEntry(LogEntry.Kind.SEGMENT_STARTED);
    onlyEntry(LogEntry.Kind.SEGMENT_DROPPED);
    assertEquals(List.of(), run.entries().of(LogEntry.Kind.SEGMENT_ENDED));
    assertEquals(List.of(), signals(), "the lamp stays idle");
  }

  @Test
  void shouldTellAStuckElectrode() {
    script().idle(1).arc(180, 2, 0.8).idle(1).sendTo(run);
    assertTrue(onlyEntry(LogEntry.Kind.TOUCH).stuck);
    assertEquals(List.of(), signals());
  }

  @Test
  void shouldCloseASegmentInAGap() {
    script().idle(1).arc(110, 23, 3).gap(0.5).arc(110, 23, 2).idle(1).sendTo(run);
    List<LogEntry> segments = run.entries().of(LogEntry.Kind.SEGMENT_ENDED);
    assertEquals(2, segments.size());
    assertEquals(SegmentEnd.GAP, segments.get(0).end);
    assertEquals(3, segments.get(0).figures.lengthSeconds, 1e-9);
    assertEquals(0, segments.get(0).figures.missingSeconds, 0);
    assertEquals(SegmentEnd.ARC_OFF, segments.get(1).end);
    assertEquals(4.5, segments.get(1).figures.startSeconds, 1e-9);
  }

  @Test
  void shouldNotMeasureShortCircuitsAtASlowRate() {
    run = new PipelineRun(PairScript.SCALE, 860, FILL);
    PairScript.at(860).idle(1).arc(110, 23, 2).idle(1).sendTo(run);
    assertEquals(-1, segment().shortCircuits);
  }

  @ParameterizedTest
  @ValueSource(doubles = {50, 60, 200})
  void shouldGiveRmsOfAnAlternatingArc(double hertz) {
    run = new PipelineRun(PairScript.SCALE, 10_000, Plans.of(Polarity.AC, Plans.amps(95, 125)));
    PairScript.at(10_000).idle(1).sine(110 * Math.sqrt(2), 18, hertz, 3).idle(1).sendTo(run);
    SegmentFigures found = segment();
    assertEquals(110, found.rmsAmps, 0.5);
    assertEquals(Polarity.AC, found.polarity);
    assertEquals(0, found.arcOuts);
    assertEquals(List.of(Signal.SETTLING, Signal.GREEN, Signal.IDLE), signals());
  }

  @Test
  void shouldTakeAnotherAssignmentAtTheNextContact() {
    JudgingPlan hot = Plans.of(Polarity.DC_PLUS, Plans.amps(180, 220));
    script().idle(1).arc(110, 23, 2).sendTo(run);
    run.pipeline().assign(new Assignment("T-02", hot));
    script().gap(3).arc(110, 23, 2).idle(1).arc(110, 23, 2).idle(1).sendTo(run);
    List<LogEntry> segments = run.entries().of(LogEntry.Kind.SEGMENT_ENDED);
    assertEquals(
        List.of("T-01", "T-02"), segments.stream().map(s -> s.assignment.trainee()).toList());
    assertEquals(0, segments.get(0).figures.redSeconds, 0);
    assertEquals(1, segments.get(1).figures.redSeconds, 1e-9);
  }

  @Test
  void shouldTakeTheArcOnCurrentOfTheProcedure() {
    run =
        new PipelineRun(PairScript.SCALE, RATE, Plans.of(Polarity.DC_MINUS, 5, Plans.amps(6, 12)));
    script().idle(1).arc(-8, -11, 2).idle(1).sendTo(run);
    assertEquals(8, segment().meanAmps, 1e-9);
    assertEquals(List.of(Signal.SETTLING, Signal.GREEN, Signal.IDLE), signals());
  }

  /** What is saved of a running segment may be two seconds old when the power goes. */
  @Test
  void shouldSendProgressAtLeastEverySecond() {
    script().idle(1).arc(110, 23, 3.5).idle(1).sendTo(run);
    double last = 0;
    for (LogEntry progress : run.entries().of(LogEntry.Kind.SEGMENT_PROGRESS)) {
      assertEquals(1, progress.figures.startSeconds, 1e-9);
      assertEquals(2_530 * progress.figures.lengthSeconds, progress.figures.energyJoules, 1e-6);
      assertTrue(progress.figures.lengthSeconds <= last + 1 + 1e-9);
      last = progress.figures.lengthSeconds;
    }
    assertTrue(last >= 2.5, "last progress after " + last + " s");
  }

  @Test
  void shouldSendTwentyTracePointsASecondUpToTheEndOfTheSegment() {
    script().idle(1).arc(110, 23, 1).arc(120, 24, 1.03).idle(1).sendTo(run);
    List<LogEntry> trace = run.entries().of(LogEntry.Kind.TRACE_POINT);
    assertEquals(41, trace.size(), "the last holds three slots");
    assertEquals(110 * 16, trace.get(19).meanCurrentCount, 0);
    assertEquals(120 * 16, trace.get(20).meanCurrentCount, 0);
    assertEquals(24 * 128, trace.get(40).meanVoltageCount, 0);
    assertEquals(24 * 128, trace.get(40).highestVoltageCount);
    assertEquals(Signal.SETTLING.code(), trace.get(10).signalCode);
    assertEquals(Signal.GREEN.code(), trace.get(25).signalCode);
  }

  @Test
  void shouldKeepAnArcOutInTheTraceAndMissingTimeAsNoReading() {
    script()
        .idle(1)
        .arc(110, 23, 1)
        .off(0.1)
        .arc(110, 23, 0.9)
        .gap(0.1)
        .arc(110, 23, 1)
        .idle(1)
        .sendTo(run);
    List<LogEntry> trace = run.entries().of(LogEntry.Kind.TRACE_POINT);
    assertEquals(62, trace.size());
    assertEquals(0, trace.get(20).meanCurrentCount, 0);
    assertTrue(Float.isNaN(trace.get(40).meanCurrentCount));
    assertTrue(Float.isNaN(trace.get(41).meanVoltageCount));
    assertEquals(0, trace.get(40).highestCurrentCount);
    assertEquals(110 * 16, trace.get(42).meanCurrentCount, 0);
  }

  @Test
  void shouldLabelEntriesByTheSamplesAndNotByTheBlocks() {
    script().idle(1).arc(110, 23, 2).idle(1).sendTo(run);
    LogEntry began = onlyEntry(LogEntry.Kind.SEGMENT_STARTED);
    assertEquals(1_000_000_000L, began.monotonicNanos);
    assertEquals(1_000, began.wallMillis);
    assertEquals(RATE, began.pairsPerSecond);
    assertEquals(PairScript.SCALE, began.scale);
    assertEquals("T-01", began.assignment.trainee());
  }

  @Test
  void shouldFinishARunningSegmentWithTheReasonGiven() {
    script().idle(1).arc(110, 23, 2).sendTo(run);
    assertTrue(run.pipeline().isArc());
    assertEquals(2, run.pipeline().arcSeconds(), 1e-9);
    run.pipeline().finish(SegmentEnd.STOPPED);
    assertEquals(SegmentEnd.STOPPED, onlyEntry(LogEntry.Kind.SEGMENT_ENDED).end);
    assertEquals(Signal.IDLE, run.pipeline().signal());
    assertEquals(0, run.pipeline().arcSeconds(), 0);
    run.pipeline().finish(SegmentEnd.STOPPED);
    onlyEntry(LogEntry.Kind.SEGMENT_ENDED);
  }

  @Test
  void shouldFinishAContactAsATouch() {
    script().idle(1).arc(180, 2, 0.1).sendTo(run);
    run.pipeline().finish(SegmentEnd.STOPPED);
    onlyEntry(LogEntry.Kind.TOUCH);
  }

  @Test
  void shouldWeighACurrentFromWhereTheZeroOfTheClampIs() {
    script().arc(2, 70, 1.5).arc(112, 23, 3).arc(2, 70, 1).sendTo(run);
    assertEquals(110, segment().meanAmps, 1e-9);
    assertEquals(List.of(), run.entries().of(LogEntry.Kind.EVENT_STARTED));
  }

  @Test
  void shouldNotCallAnElectrodeStuckWhoseVoltageNobodySees() {
    script().idle(1).arc(110, 0.25, 2).idle(1).sendTo(run);
    assertFalse(onlyEntry(LogEntry.Kind.TOUCH).stuck);
    assertEquals(EventKind.AMPS_WITHOUT_VOLTS, onlyEntry(LogEntry.Kind.EVENT_ENDED).event);
    assertEquals(List.of(Signal.FAULT, Signal.IDLE), signals());
  }

  @Test
  void shouldJudgeNothingUnderAFaultAndBeginTheAverageAnewAfterIt() {
    script().idle(1).arc(110, 23, 3).frozen(110, 23, 1).arc(110, 23, 3.2).idle(1).sendTo(run);
    assertEquals(
        List.of(
            Signal.SETTLING,
            Signal.GREEN,
            Signal.FAULT,
            Signal.SETTLING,
            Signal.GREEN,
            Signal.IDLE),
        signals());
    SegmentFigures f = segment();
    double fault = f.faultSeconds;
    assertEquals(1.65, fault, 0.05, "to the next count of change, and half a second more");
    assertEquals(2, f.settlingSeconds, 0.05);
    assertEquals(7.2, f.greenSeconds + f.settlingSeconds + fault, 1e-9);
    assertEquals(List.of(), run.entries().of(LogEntry.Kind.EXCURSION));
  }

  @Test
  void shouldEndAnExcursionWhereTheTrustInTheSensorsEnds() {
    script().idle(1).arc(110, 23, 3).arc(170, 23, 1.5).arc(170, 0.25, 2).idle(1).sendTo(run);
    LogEntry excursion = onlyEntry(LogEntry.Kind.EXCURSION);
    assertEquals(Quantity.AMPS, excursion.quantity);
    assertEquals(5.5, excursion.startSeconds + excursion.lengthSeconds, 1e-9);
  }

  @Test
  void shouldEndWhatIsOpenWhenItIsClosed() {
    script().idle(1).arc(-110, -23, 2).sendTo(run);
    assertEquals(List.of(), run.entries().of(LogEntry.Kind.EVENT_ENDED));
    run.pipeline().close(SegmentEnd.STOPPED);
    assertEquals(2, onlyEntry(LogEntry.Kind.EVENT_ENDED).lengthSeconds, 1e-9);
    onlyEntry(LogEntry.Kind.SEGMENT_ENDED);
  }

  @Test
  void shouldStayInFaultWhileThereIsNoArcIfTheFaultIsThereToo() {
    script().idle(1).arc(6, 70, 2).idle(2).sendTo(run);
    assertEquals(List.of(Signal.FAULT, Signal.IDLE), signals());
    assertEquals(EventKind.ZERO_DRIFT, onlyEntry(LogEntry.Kind.EVENT_ENDED).event);
  }
}
