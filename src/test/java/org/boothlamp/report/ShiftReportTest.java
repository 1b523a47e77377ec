package org.boothlamp.report;

import static org.boothlamp.report.EveningShift.at;
import static org.boothlamp.report.RunBuilder.run;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.boothlamp.judging.Side;
import org.boothlamp.procedure.Quantity;
import org.boothlamp.procedure.Window;
import org.junit.jupiter.api.Test;

class ShiftReportTest {

  private static final double EXACT = 1e-12;

  private final ShiftReport report = EveningShift.report();

  @Test
  void shouldListTraineesByCodeAndNobodyLast() {
    assertEquals(
        List.of("T-04", "T-11", "T-15", ""),
        report.trainees().stream().map(TraineeSummary::trainee).toList());
    assertEquals(3, report.traineeCount());
  }

  @Test
  void shouldGiveATraineeOneRowForEachPassInOrderOfTheFirstRun() {
    assertEquals(
        List.of("fill", "cap"),
        report.trainees().get(0).passes().stream().map(row -> row.pass().pass()).toList());
  }

  @Test
  void shouldWeighMeansByTheTimeThatWasMeasured() {
    Figures fill = report.trainees().get(0).passes().get(0).figures();
    // 20 s at 110 A and 22 V, 40 s less 2 s missing at 120 A and 25 V:
    // (20 * 110 + 38 * 120) / 58 = 6760 / 58; (20 * 22 + 38 * 25) / 58 = 1390 / 58
    assertEquals(6_760.0 / 58, fill.meanAmps(), EXACT);
    assertEquals(1_390.0 / 58, fill.meanVolts(), EXACT);
  }

  @Test
  void shouldTakeTheShareOfJudgedTimeAndNotOfArcTime() {
    Figures fill = report.trainees().get(0).passes().get(0).figures();
    // green 15 + 20, amber 2.5 + 10, red 1.5 + 7: inside 47.5 of 56 judged, of 60 s arc
    assertEquals(60, fill.arcSeconds(), EXACT);
    assertEquals(56, fill.judgedSeconds(), EXACT);
    assertEquals(47.5, fill.insideSeconds(), EXACT);
    assertEquals(47.5 / 56, fill.insideShare(), EXACT);
  }

  @Test
  void shouldAddUpATraineesPassesButNotTheirMeans() {
    Figures total = report.trainees().get(0).total();
    // 20 + 40 + 90 s arc; green 15 + 20 + 89, amber 12.5, red 8.5
    assertEquals(3, total.runs());
    assertEquals(150, total.arcSeconds(), EXACT);
    assertEquals(136.5 / 145, total.insideShare(), EXACT);
    assertTrue(Double.isNaN(total.meanAmps()));
    assertEquals(2, total.arcOuts());
    assertEquals(2, total.missingSeconds(), EXACT);
    assertEquals(379_600, total.energyJoules(), EXACT);
  }

  @Test
  void shouldKeepTheMeansInTheTotalOfASinglePass() {
    Figures total = report.trainees().get(1).total();
    // 10 s at 141.26 A and 10 s at 110 A
    assertEquals(125.63, total.meanAmps(), EXACT);
  }

  @Test
  void shouldCountExcursionsByQuantityAndSideWithTheFarthest() {
    // volts high 0.9 + 0.6 + 4 s, farthest 28.9; amps low once
    assertEquals(
        List.of(
            new ExcursionTally(Quantity.AMPS, Side.LOW, 1, 3, 91.2),
            new ExcursionTally(Quantity.VOLTS, Side.HIGH, 3, 0.9 + 0.6 + 4, 28.9)),
        report.trainees().get(0).total().excursions());
  }

  @Test
  void shouldTakeTheLowestAsFarthestOnTheLowSide() {
    RunRecord run =
        run()
            .excursion(Quantity.AMPS, Side.LOW, 1, 1, 90)
            .excursion(Quantity.AMPS, Side.LOW, 3, 1, 85)
            .excursion(Quantity.AMPS, Side.LOW, 5, 1, 92)
            .build();
    assertEquals(
        List.of(new ExcursionTally(Quantity.AMPS, Side.LOW, 3, 3, 85)),
        ExcursionTally.of(run.excursions()));
  }

  @Test
  void shouldCountTouchesForTraineesWhoNeverWelded() {
    TraineeSummary welder = report.trainees().get(0);
    TraineeSummary scratcher = report.trainees().get(2);
    assertEquals(List.of(2, 1), List.of(welder.touches(), welder.stuck()));
    assertEquals(List.of(1, 0), List.of(scratcher.touches(), scratcher.stuck()));
    assertEquals(0, scratcher.total().runs());
  }

  @Test
  void shouldHaveNoShareWhereNothingWasJudged() {
    Figures nobody = report.trainees().get(3).total();
    assertEquals(10, nobody.settlingSeconds(), EXACT);
    assertTrue(Double.isNaN(nobody.insideShare()));
  }

  @Test
  void shouldAddUpTheClass() {
    Figures total = report.total();
    // arc 150 + 20 + 10; judged 145 + 9 (all red) + 0
    assertEquals(6, total.runs());
    assertEquals(180, total.arcSeconds(), EXACT);
    assertEquals(154, total.judgedSeconds(), EXACT);
    assertEquals(136.5 / 154, total.insideShare(), EXACT);
    assertEquals(9, total.faultSeconds(), EXACT);
  }

  @Test
  void shouldFlagWhatMakesARunDoubtful() {
    assertEquals(
        List.of(
            List.of(),
            List.of(RunFlag.GAPS),
            List.of(),
            List.of(RunFlag.UNCALIBRATED),
            List.of(RunFlag.WRONG_POLARITY, RunFlag.FAULT, RunFlag.POWER_LOSS),
            List.of()),
        report.runs().stream().map(RunSummary::flags).toList());
  }

  @Test
  void shouldFlagARunThatEndedAtAGapOrAStop() {
    Spells none = Spells.of("wrong polarity", List.of());
    assertEquals(List.of(RunFlag.GAPS), RunFlag.of(run().end("gap").build(), none, true));
    assertEquals(List.of(RunFlag.STOPPED), RunFlag.of(run().end("stopped").build(), none, true));
  }

  @Test
  void shouldFindTheRunsThatAnEventFellInto() {
    Spells spells =
        Spells.of(
            "wrong polarity",
            List.of(
                EveningShift.event("wrong polarity", true, at(12, 0, 0), 60, 0, ""),
                EveningShift.event("no samples", true, at(13, 0, 0), 60, 0, ""),
                EveningShift.event("wrong polarity", true, at(12, 0, 30), 1, 0, ""),
                EveningShift.event("wrong polarity", true, at(14, 0, 0), Double.NaN, 0, "")));
    assertFalse(spells.overlap(run().at(at(11, 59, 49)).build()), "ends 1 s before");
    assertTrue(spells.overlap(run().at(at(11, 59, 50)).build()), "touches the start");
    assertTrue(spells.overlap(run().at(at(12, 0, 45)).build()), "inside the longer one");
    assertFalse(spells.overlap(run().at(at(12, 1, 1)).build()), "starts 1 s after");
    assertFalse(spells.overlap(run().at(at(13, 0, 0)).build()), "another kind of event");
    assertTrue(spells.overlap(run().at(at(13, 59, 55)).build()), "holds its moment");
    assertFalse(spells.overlap(run().at(at(14, 0, 1)).build()), "an unseen end is no length");
  }

  @Test
  void shouldHoldRmsAgainstTheWindowOfAnAlternatingCurrent() {
    RunRecord run = run().means(100, 18).alternating(112, 20.5).build();
    assertEquals(112, run.amps());
    assertEquals(20.5, run.volts());
    assertEquals(112, shift(run).trainees().get(0).total().meanAmps(), EXACT);
  }

  @Test
  void shouldLeaveRunsWithoutAMeanOutOfTheMean() {
    ShiftReport shift =
        shift(run().means(Double.NaN, Double.NaN).build(), run().means(100, 21).build());
    assertEquals(100, shift.trainees().get(0).total().meanAmps(), EXACT);
  }

  @Test
  void shouldCountShortCircuitsASecondOfMeasuredTime() {
    // 40 in 10 s less 2 s missing
    assertEquals(5, run().missing(2).build().shortCircuitsPerSecond(), EXACT);
    assertTrue(Double.isNaN(run().shortCircuits(-1).build().shortCircuitsPerSecond()));
    assertTrue(Double.isNaN(run().missing(10).build().shortCircuitsPerSecond()));
    assertEquals(0, run().shortCircuits(0).build().shortCircuitsPerSecond(), EXACT);
  }

  @Test
  void shouldListRevisionsAndChangedLimitsApart() {
    Window wider = new Window(Quantity.AMPS, 80, 140);
    ShiftReport shift =
        shift(
            run().build(),
            run().pass("S-3F-18", "3", "fill", wider).build(),
            run().pass("S-3F-18", "3", "fill", new Window(Quantity.AMPS, 90, 140)).build());
    assertEquals(3, shift.trainees().get(0).passes().size());
    assertEquals(
        List.of(
            "The limits of S-3F-18 r3 fill changed without a new revision: runs before and after"
                + " are listed apart."),
        Doubts.of(shift));
  }

  @Test
  void shouldMakeAReportOfNothing() {
    ShiftReport empty = shift();
    assertEquals(0, empty.total().runs());
    assertTrue(Double.isNaN(empty.total().insideShare()));
    assertEquals(List.of(), empty.trainees());
    assertEquals(List.of(), Doubts.of(empty));
  }

  private static ShiftReport shift(RunRecord... runs) {
    return ShiftReport.of(
        new ShiftRecords(List.of(runs), List.of(), List.of()), EveningShift.SPAN, "B-07", "");
  }
}
