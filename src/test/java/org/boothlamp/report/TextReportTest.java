package org.boothlamp.report;

import static org.boothlamp.report.EveningShift.at;
import static org.boothlamp.report.RunBuilder.run;
import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.util.List;
import org.boothlamp.health.HealthFault;
import org.boothlamp.judging.Side;
import org.boothlamp.procedure.Quantity;
import org.boothlamp.procedure.Window;
import org.boothlamp.words.Language;
import org.boothlamp.words.Phrases;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

class TextReportTest {

  private static final EventWords EVENT_WORDS = new EventWords(Phrases.in(Language.ENGLISH));

  private static final String LONG_CODE = "TRAINEE-" + "0123456789".repeat(10);

  @Test
  void shouldTellAnEveningAsAPersonReadsIt() throws IOException {
    assertEquals(
        resource("evening.txt"), TextReport.render(EveningShift.report(), 80, Colour.PLAIN));
  }

  @Test
  void shouldSayTheSameWithColourAsWithout() {
    String coloured = TextReport.render(EveningShift.report(), 80, Colour.ANSI);
    assertTrue(coloured.contains("\u001b[31mhigh\u001b[0m"), "a mean outside is red");
    assertEquals(
        TextReport.render(EveningShift.report(), 80, Colour.PLAIN),
        coloured.replaceAll("\u001b\\[[0-9]+m", ""));
  }

  @Test
  void shouldTellOfAShiftInWhichNothingHappened() {
    assertEquals(
        """
        Booth B-07, 2026-03-25, Europe/Berlin time
        No run was welded.

        WHAT THESE NUMBERS CANNOT BE TRUSTED FOR
        Nothing was noticed that would put them in doubt.

        The lamp is no safety device, and nothing here accepts a weld.
        """,
        render());
  }

  @Test
  void shouldTellOfATraineeWhoOnlyScratched() {
    ShiftRecords records =
        new ShiftRecords(List.of(), List.of(new TouchRecord("T-15", 0, 1, 0.2, false)), List.of());
    String text =
        TextReport.render(ShiftReport.of(records, EveningShift.SPAN, "B-07", ""), 80, Colour.PLAIN);
    assertTrue(text.contains("\nT-15              0      0.0 s not judged"));
    assertFalse(text.contains("BY TRAINEE"), "there is no run to tell of");
  }

  @Test
  void shouldKeepEveryLineInsideThePageWithTheLongestNames() {
    String text =
        render(
            run()
                .trainee(LONG_CODE)
                .pass(LONG_CODE, LONG_CODE, LONG_CODE, new Window(Quantity.AMPS, 1.125, 1_999.875))
                .excursion(Quantity.POWER_W, Side.HIGH, 1, 4_000, 123_456)
                .means(1_999.9, 99.9)
                .energy(9_999_900)
                .shortCircuits(-1)
                .arcOuts(1_234)
                .length(3_723)
                .build(),
            run().trainee("T-04").build());
    assertEquals(List.of(), text.lines().filter(line -> line.length() > 80).toList());
    assertTrue(text.replaceAll("\\s+", "").contains(LONG_CODE), "codes are never cut short");
  }

  @Test
  void shouldPutAnOverlongNameOnALineOfItsOwn() {
    assertTrue(
        render(run().trainee("EVENING-TRAINEE-04").build())
            .contains("\nEVENING-TRAINEE-04\n                  1     10.0 s"));
  }

  @Test
  void shouldTakeANarrowPageAsOneOfEightyCharacters() {
    assertEquals(
        TextReport.render(EveningShift.report(), 80, Colour.PLAIN),
        TextReport.render(EveningShift.report(), 1, Colour.PLAIN));
  }

  @Test
  void shouldNameTheDayWhenASpanHasSeveral() {
    ShiftSpan span =
        ShiftSpan.days(LocalDate.of(2026, 3, 24), LocalDate.of(2026, 3, 25), EveningShift.ZONE);
    ShiftRecords records =
        new ShiftRecords(
            List.of(run().at(at(9, 0, 0).minusDays(1)).build(), run().at(at(9, 0, 0)).build()),
            List.of(),
            List.of(EveningShift.event("reconnected", false, at(9, 0, 0), 0, 0, "")));
    String text = TextReport.render(ShiftReport.of(records, span, "", ""), 80, Colour.PLAIN);
    assertTrue(text.contains("All booths, 2026-03-24 to 2026-03-25,"));
    assertTrue(text.contains("\n2026-03-24\nT-04: S-3F-18 r2 fill"));
    assertTrue(text.contains("\n2026-03-25\nT-04: S-3F-18 r2 fill"));
    assertTrue(text.contains("- reconnected, at 2026-03-25 09:00:00."));
  }

  @Test
  void shouldSayOnceThatNoRunIsCalibrated() {
    String text = render(run().uncalibrated().build(), run().uncalibrated().build());
    assertTrue(text.contains("- In 2 of 2 runs, the sensors had no calibration"));
    assertFalse(text.contains("uncalibrated"));
  }

  @Test
  void shouldSayThatAlternatingCurrentIsRms() {
    String text = render(run().means(90, 18).alternating(112.3, 20.5).build());
    assertTrue(text.contains("Amps and volts of AC runs are RMS."));
    assertTrue(text.contains("mean 112.3 A, 20.5 V"));
  }

  @Test
  void shouldTellWhenARunIsTooShortOrTooLong() {
    Window length = new Window(Quantity.ARC_S, 20, 40);
    assertTrue(
        render(run().pass("P-1", "1", "root", length).length(10).build())
            .contains("run length low"));
    assertTrue(
        render(run().pass("P-1", "1", "root", length).length(50).build())
            .contains("run length high"));
  }

  @Test
  void shouldCountEventsAndNotListThemAll() {
    EventRecord one = EveningShift.event("bad frames", false, at(9, 0, 0), 0.5, 2, "");
    EventRecord open = EveningShift.event("no samples", true, at(9, 5, 0), Double.NaN, 0, "");
    ShiftReport report =
        ShiftReport.of(
            new ShiftRecords(List.of(), List.of(), List.of(one, one, one, one, one, one, open)),
            EveningShift.SPAN,
            "B-07",
            "");
    List<String> lines =
        EventSummary.of(report.events()).stream()
            .map(events -> EventLine.of(events, report.span()).replace(Numbers.GLUE, ' '))
            .toList();
    assertEquals(
        List.of(
            "bad frames 6x, 12 frames, 3.0 s together, at 09:00:00, 09:00:00, 09:00:00, 09:00:00"
                + " and 2 times more. Damaged on the line and left out.",
            "no samples, end not seen, at 09:05:00. Nothing was measured meanwhile; the lamp"
                + " showed fault."),
        lines);
  }

  @Test
  void shouldShowAnEventItDoesNotKnowAsADoubt() {
    assertTrue(EventWords.isDoubt("moon phase"));
    assertEquals("", EVENT_WORDS.meaning("moon phase"));
    assertEquals("3" + Numbers.GLUE + "counted", EVENT_WORDS.counted("moon phase", 3));
  }

  @Test
  void shouldShareOutTheBarSoThatAShortRedSpellIsSeen() {
    assertArrayEquals(new int[] {13, 0, 1}, LevelBar.cells(9_999, 0, 1));
    assertArrayEquals(new int[] {1, 1, 12}, LevelBar.cells(1, 1, 9_998));
    // 14 cells: 4.67 each is 5 each, and the first of the largest gives the one too many
    assertArrayEquals(new int[] {4, 5, 5}, LevelBar.cells(2, 2, 2));
    assertArrayEquals(new int[] {14, 0, 0}, LevelBar.cells(2, 0, 0));
  }

  private static String render(RunRecord... runs) {
    ShiftRecords records = new ShiftRecords(List.of(runs), List.of(), List.of());
    return TextReport.render(
        ShiftReport.of(records, EveningShift.SPAN, "B-07", ""), 80, Colour.PLAIN);
  }

  static String resource(String name) throws IOException {
    try (InputStream in = TextReportTest.class.getResourceAsStream("/report/" + name)) {
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    }
  }

  @ParameterizedTest
  @EnumSource
  void shouldSayWhatEveryFaultOfTheSensorsMeansAndTheNextMove(HealthFault fault) {
    String text = EVENT_WORDS.meaning(fault.word());
    assertTrue(text.startsWith(fault.meaning()) && text.endsWith(fault.nextMove() + "."), text);
    assertTrue(EventWords.isDoubt(fault.word()));
  }

  @ParameterizedTest
  @EnumSource
  void shouldGiveEveryFaultOfTheSensorsARow(HealthFault fault) {
    EventRecord event = EveningShift.event(fault.word(), true, at(9, 0, 0), 2.5, 0, "");
    ShiftReport report =
        ShiftReport.of(
            new ShiftRecords(List.of(), List.of(), List.of(event)), EveningShift.SPAN, "B-07", "");
    String text =
        TextReport.render(report, 200, Colour.PLAIN)
            .replace(Numbers.GLUE, ' ')
            .replaceAll("\\s+", " ");
    assertTrue(text.contains(fault.word() + ", 2.5 s, at 09:00:00. " + fault.meaning()), text);
  }
}
