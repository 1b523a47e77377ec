package org.boothlamp.report;

import static org.boothlamp.report.RunBuilder.run;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.StringWriter;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Reports of starts whose clock was never set, and of nights in which the clocks change. */
class UntimedReportTest {

  private static final ZoneId BERLIN = ZoneId.of("Europe/Berlin");

  private static ShiftReport report() {
    EventRecord cut =
        new EventRecord("power loss", false, 5_000, 4, 0, 1, "segment 9 has the figures");
    ShiftRecords untimed =
        new ShiftRecords(
            List.of(run().id(8).startSeconds(12).build(), run().id(9).startSeconds(75).build()),
            List.of(new TouchRecord("T-04", 3_000, 3, 0.1, true)),
            List.of(cut));
    RunRecord timed = run().id(4).at(EveningShift.at(18, 0, 0)).build();
    return ShiftReport.of(
        new ShiftRecords(
            List.of(timed), List.of(), List.of(), List.of(new UntimedStart(41, untimed))),
        EveningShift.SPAN,
        "B-07",
        "");
  }

  @Test
  void shouldCountRunsWhoseTimeIsNotKnownAndListThemApart() {
    String text = TextReport.render(report(), 80, Colour.PLAIN).replace(Numbers.GLUE, ' ');
    assertTrue(text.contains("1 trainee, 3 runs"), text);
    int heading = text.indexOf("TIME OF DAY NOT KNOWN: START 41 OF THE MONITOR");
    assertTrue(heading > text.indexOf("18:00:00"), text);
    assertTrue(text.indexOf("12.0 s", heading) < text.indexOf("1:15 min", heading), text);
    assertTrue(text.contains("In 2 of 3 runs, the time of day is not known"), text);
    assertTrue(text.contains("start 41: power loss (segment 9 has the figures)."), text);
    assertFalse(text.contains("1970") || text.contains("01:00:05"), text);
  }

  @Test
  void shouldMarkThemInJsonAndLeaveTheirTimesOut() throws IOException {
    StringWriter out = new StringWriter();
    JsonReport.write(report(), out);
    List<String> runs =
        out.toString().lines().filter(l -> l.startsWith("{\"kind\":\"run\"")).toList();
    assertTrue(runs.get(0).contains("\"time_known\":true"), runs.get(0));
    for (String run : runs.subList(1, 3)) {
      assertTrue(run.contains("\"start\":null,\"time_known\":false,\"monitor_start\":41"), run);
      assertTrue(run.contains("\"flags\":[\"time of day not known\"]"), run);
    }
    assertTrue(out.toString().contains("\"touches\":1,\"stuck\":1"));
  }

  @Test
  void shouldKeepOnlyTheTraineeAskedForAmongThemToo() {
    ShiftRecords records =
        new ShiftRecords(
            List.of(),
            List.of(),
            List.of(),
            List.of(
                new UntimedStart(
                    2,
                    new ShiftRecords(
                        List.of(run().trainee("T-04").build(), run().trainee("T-11").build()),
                        List.of(),
                        List.of()))));
    assertEquals(1, records.only("T-11").untimed().get(0).records().runs().size());
  }

  /** One run before the change and one ten minutes later; local labels of both. */
  @ParameterizedTest
  @CsvSource({
    "Europe/Berlin, 2026-10-25T00:55:00Z, 02:55:00, 02:05:00",
    "Europe/Berlin, 2026-03-29T00:55:00Z, 01:55:00, 03:05:00",
    "America/New_York, 2026-11-01T05:55:00Z, 01:55:00, 01:05:00",
    "America/New_York, 2026-03-08T06:55:00Z, 01:55:00, 03:05:00",
  })
  void shouldKeepOrderAndLengthsWhenTheClocksChange(
      String zoneName, Instant first, String firstLabel, String secondLabel) {
    ZoneId zone = ZoneId.of(zoneName);
    LocalDate day = first.atZone(zone).toLocalDate();
    RunRecord before = run().id(1).at(first.atZone(ZoneOffset.UTC)).build();
    RunRecord after = run().id(2).at(first.plusSeconds(600).atZone(ZoneOffset.UTC)).build();
    ShiftReport report =
        ShiftReport.of(
            new ShiftRecords(List.of(before, after), List.of(), List.of()),
            ShiftSpan.today(day, zone),
            "B-07",
            "");
    String text = TextReport.render(report, 80, Colour.PLAIN);
    int runs = text.indexOf("RUNS, ONE BY ONE");
    assertTrue(text.indexOf(firstLabel, runs) > 0, text);
    assertTrue(text.indexOf(secondLabel, runs) > text.indexOf(firstLabel, runs), text);
    assertEquals(20, report.total().arcSeconds());
  }

  @Test
  void shouldHoldNothingThatIsNegativeWhenARunCrossesTheChange() {
    RunRecord across = run().id(1).at(Instant.parse("2026-10-25T00:59:55Z").atZone(BERLIN)).build();
    ShiftReport report =
        ShiftReport.of(
            new ShiftRecords(List.of(across), List.of(), List.of()),
            ShiftSpan.today(LocalDate.of(2026, 10, 25), BERLIN),
            "B-07",
            "");
    assertEquals(10, report.total().arcSeconds());
  }
}
