package org.boothlamp.report;

import static org.boothlamp.report.RunBuilder.run;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import org.boothlamp.judging.Side;
import org.boothlamp.procedure.Quantity;
import org.junit.jupiter.api.Test;

class GlanceTest {

  private static Glance glance(List<RunRecord> runs, List<TouchRecord> touches) {
    ShiftRecords records = new ShiftRecords(runs, touches, List.of());
    ShiftReport report = ShiftReport.of(records, EveningShift.SPAN, "B-07", "");
    ShiftTime time =
        ShiftTime.of(records, EveningShift.SPAN, List.of(), EveningShift.SPAN.untilWallMillis());
    return Glance.of(report, new Glance.Beside(time, List.of(), List.of()));
  }

  private static LookAt lookAt(RunBuilder... runs) {
    return glance(List.of(runs).stream().map(RunBuilder::build).toList(), List.of())
        .rows()
        .get(0)
        .lookAt();
  }

  private static GlanceRow evening(String trainee) {
    return EveningShift.glance().rows().stream()
        .filter(row -> row.summary().trainee().equals(trainee))
        .findFirst()
        .orElseThrow();
  }

  @Test
  void shouldSayWhatMostDeservesALook() {
    RunBuilder outside = run().excursion(Quantity.VOLTS, Side.HIGH, 1, 2, 28);
    assertEquals(LookAt.OUTSIDE, lookAt(outside));
    assertEquals(LookAt.INSIDE, lookAt(run()));
    assertEquals(LookAt.NEAR, lookAt(run().levels(4, 5, 0, 1)));
    assertEquals(LookAt.BRIEFLY_OUTSIDE, lookAt(run().levels(8, 0, 1, 1).arcOuts(3)));
    assertEquals(LookAt.ARC_OUTS, lookAt(run().arcOuts(2), run()));
    assertEquals(LookAt.INSIDE, lookAt(run().arcOuts(1), run()));
    assertEquals(LookAt.NOT_JUDGED, lookAt(run().noProcedure()));
    assertEquals(LookAt.FAULT, lookAt(run().levels(3, 0, 0, 1).fault(6)));
    assertEquals(LookAt.POLARITY, evening("T-11").lookAt());
    assertEquals(LookAt.NO_RUN, evening("T-15").lookAt());
  }

  @Test
  void shouldSayThatTheElectrodeStuckIfNothingWorseHappened() {
    TouchRecord stuck = new TouchRecord("T-04", 0, 0, 0.9, true);
    Glance glance = glance(List.of(run().build()), List.of(stuck));
    assertEquals(LookAt.STUCK, glance.rows().get(0).lookAt());
  }

  @Test
  void shouldNameTheExcursionThatCameMostOften() {
    OftenOutside most = evening("T-04").oftenest();
    assertEquals(Quantity.VOLTS, most.quantity());
    assertEquals(Side.HIGH, most.side());
    assertEquals(3, most.count());
    assertEquals(2, most.runs());
    assertEquals("fill", most.pass());
    assertNull(evening("T-15").oftenest());
  }

  @Test
  void shouldNameThreeToStandBesideWorstFirst() {
    List<RunRecord> runs = new ArrayList<>();
    for (int i = 0; i < 5; i++) {
      RunBuilder run = run().trainee("T-0" + i).length(21).levels(20 - 3 * i, 0, 3 * i, 1);
      runs.add(run.excursion(Quantity.AMPS, Side.HIGH, 2, 3, 130).build());
    }
    List<String> beside =
        glance(runs, List.of()).standBeside().stream().map(row -> row.summary().trainee()).toList();
    assertEquals(List.of("T-04", "T-03", "T-02"), beside);
  }

  @Test
  void shouldNotSendAnybodyForAShortRunAFewSecondsOrNobody() {
    RunRecord few = run().levels(0, 0, 5, 1).build();
    RunRecord little = run().trainee("T-05").length(100).levels(91, 0, 8, 1).build();
    RunRecord nobodys = run().trainee("").length(30).levels(0, 0, 29, 1).build();
    assertTrue(glance(List.of(few, little, nobodys), List.of()).standBeside().isEmpty());
  }

  @Test
  void shouldDivideByTheShiftAndByTheTimeSignedIn() {
    OperatorFactor operator = evening("T-04").operator();
    // 2:30 min of arc in four hours; signed in from 17:25 to 18:05, of which 35 min are in the
    // shift
    assertEquals(150.0 / (4 * 3_600), operator.ofShift(), 1e-12);
    assertEquals(150.0 / (35 * 60), operator.ofSignedIn(), 1e-12);
    assertTrue(Double.isNaN(evening("").operator().ofSignedIn()));
  }

  @Test
  void shouldTellTwoBoothsApartWhenSignInsOverlap() {
    ShiftTime time = EveningShift.glance().shift();
    long start = time.stretches().get(0).fromWallMillis();
    SignedInTime signedIn =
        new SignedInTime(
            List.of(
                new SignInMoment("B-01", start, "T-01"),
                new SignInMoment("B-02", start + 60_000, "T-02"),
                new SignInMoment("B-01", start + 600_000, "")),
            time);
    assertEquals(600, signedIn.of("T-01"));
    assertEquals(4 * 3_600 - 60, signedIn.of("T-02"));
    assertTrue(Double.isNaN(signedIn.of("T-03")));
  }

  @Test
  void shouldCompareWithTheDaysBefore() {
    ChangeAgainstLastShifts change = evening("T-04").change();
    assertEquals(3, change.days());
    assertEquals(0.75, change.earlierShare(), 1e-12);
    assertEquals(47.5 / 56, change.share(), 1e-12, "fill alone");
    assertNull(evening("T-11").change());
  }
}
