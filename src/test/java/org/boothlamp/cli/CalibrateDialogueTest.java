package org.boothlamp.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import org.boothlamp.calibration.CalibrationFinish.Ending;
import org.boothlamp.calibration.CalibrationPoint;
import org.boothlamp.calibration.CalibrationRecord;
import org.boothlamp.calibration.Direction;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The dialogue, line by line. */
class CalibrateDialogueTest {

  /** Levels as suggested, then all points of the way up and down. */
  private static final String SOUND =
      """


      0

      125

      250

      375

      500

      375

      250

      125

      0
      """;

  @TempDir Path folder;
  private CalibrateBench bench;

  @BeforeEach
  void setUp() {
    bench = new CalibrateBench(folder);
  }

  private CommandRun talk(String... lines) {
    return bench.typing(String.join("\n", lines) + "\n", "current", CalibrateBench.meter());
  }

  @Test
  void shouldAskForEverythingAndAccept() {
    String typed =
        String.join(
            "\n",
            "K-2",
            "bench meter",
            "M-1",
            "C-77",
            LocalDate.now().minusMonths(2).toString(),
            "0.1",
            "2",
            "0.1",
            SOUND + "accept\n");
    CommandRun run = bench.typing(typed, "current").exits(0);
    CalibrationRecord record = bench.only();
    assertTrue(record.isAccepted());
    assertEquals(9, record.points().size());
    assertEquals("M-1", record.head().meter().serialNumber());
    assertEquals(0.1, record.head().meter().accuracyPercentOfReading());
    assertEquals(125, record.finish().scale().toUnits(record.points().get(1).meanCounts()), 0.05);
    assertTrue(run.out().contains("Point 1 of 9: set 0 A, rising"), run.out());
    assertTrue(run.out().contains("Stable for 10 s: 133 A by the nominal scale (mean"), run.out());
    assertTrue(run.out().contains("Point 9 of 9: set 0 A, falling"), run.out());
    assertTrue(run.out().contains("verdict   can be accepted; due again"), run.out());
  }

  @Test
  void shouldAskAgainAfterAWrongAnswer() {
    String typed =
        String.join(
                "\n",
                "John Smith",
                "K-2",
                "bench meter",
                "",
                "M-1",
                "C-77",
                "2.3.2026",
                "2026-03-02",
                "0,5",
                "yes",
                "-2",
                "?",
                "2",
                "1,250",
                "back",
                "3",
                "0.1",
                "leave")
            + "\n";
    CommandRun run = bench.typing(typed, "current").exits(0);
    assertTrue(run.out().contains("never a name, is \"John Smith\""), run.out());
    assertTrue(run.out().contains("it must not be empty; copy it from the meter"), run.out());
    assertTrue(run.out().contains("a day is year-month-day like 2026-03-02, is \"2.3.2026\""));
    assertTrue(run.out().contains("did you mean 0.5? (yes or no)"), run.out());
    assertTrue(run.out().contains("it must be 0 to 1000, is -2"), run.out());
    assertTrue(run.out().contains("did you mean 1.250 or 1250?"), run.out());
    assertEquals(0.5, bench.only().head().meter().accuracyPercentOfReading());
    assertEquals(3, bench.only().head().meter().accuracyCounts());
    assertTrue(bench.only().isUnderWay());
  }

  @Test
  void shouldBeginNothingIfThePersonLeavesBefore() {
    CommandRun run = bench.typing("K-2\nleave\n", "current").exits(0);
    assertTrue(run.out().contains("Nothing was begun."));
    assertEquals(List.of(), bench.book.history().records());
  }

  @Test
  void shouldQuestionACommaAndNotGuess() {
    talk("", "", "0", "", "124,3", "no", "124.3", "leave").exits(0);
    assertEquals(124.3, bench.only().points().get(1).reference());
  }

  @Test
  void shouldTakeACommaThatWasMeantAsAPoint() {
    CommandRun run = talk("", "", "0", "", "124,3", "yes", "leave").exits(0);
    assertTrue(run.out().contains("\"124,3\": a number has a full stop"), run.out());
    assertTrue(run.out().contains("did you mean 124.3? (yes or no)"), run.out());
    assertEquals(124.3, bench.only().points().get(1).reference());
  }

  @Test
  void shouldQuestionAUnitSlipAndMeasureAnew() {
    CommandRun run = talk("", "", "0", "", "124300", "no", "124.3", "leave").exits(0);
    assertTrue(run.out().contains("the reference says 124300 A, the sensor 133 A"), run.out());
    assertTrue(run.out().contains("is it in mA?"), run.out());
    assertEquals(124.3, bench.only().points().get(1).reference());
    assertEquals(2, bench.only().points().size());
  }

  @Test
  void shouldLetAnOddReferencePassIfItIsConfirmed() {
    talk("", "", "0", "", "80", "yes", "leave").exits(0);
    assertEquals(80, bench.only().points().get(1).reference());
  }

  @Test
  void shouldAskBackForAUnit() {
    CommandRun run = talk("", "", "0", "", "124.3 A", "y", "", "0.25 kA", "y", "leave").exits(0);
    assertTrue(run.out().contains("did you mean 250?"), run.out());
    assertEquals(124.3, bench.only().points().get(1).reference());
    assertEquals(250, bench.only().points().get(2).reference());
  }

  @Test
  void shouldThrowAPointAwayWithItsReasonAndTakeItAgain() {
    talk("", "", "0", "", "131", "yes", "discard 2 lead slipped", "", "125", "leave").exits(0);
    List<CalibrationPoint> points = bench.only().points();
    assertEquals(3, points.size());
    assertEquals("lead slipped", points.get(1).discardReason());
    assertEquals(125, points.get(2).reference());
    assertEquals(125, points.get(2).level());
    assertEquals(Direction.RISING, points.get(2).direction());
  }

  @Test
  void shouldAskForTheReasonAndKeepThePointWithoutOne() {
    CommandRun run = talk("", "", "0", "discard", "", "discard", "wrong lead", "leave").exits(0);
    assertTrue(run.out().contains("without a reason it stays"), run.out());
    assertEquals("wrong lead", bench.only().points().get(0).discardReason());
  }

  @Test
  void shouldGoBackToTheLastPoint() {
    CommandRun run = talk("", "", "0", "", "125", "back", "", "125.1", "leave").exits(0);
    assertEquals("taken again", bench.only().points().get(1).discardReason());
    assertEquals(125.1, bench.only().points().get(2).reference());
    assertTrue(run.out().contains("Point 3 of 9"), run.out());
  }

  @Test
  void shouldMeasureAnewAtTheReference() {
    CommandRun run = talk("", "", "repeat", "0", "leave").exits(0);
    assertEquals(2, run.out().split("Stable for 10 s", -1).length - 1);
    assertEquals(1, bench.only().points().size());
  }

  @Test
  void shouldBeLeftAndTakenUpAgain() {
    CommandRun left = talk("", "", "0", "", "125", "leave").exits(0);
    assertTrue(left.out().contains("the same command goes on with it"), left.out());
    String rest = SOUND.substring(SOUND.indexOf("250") - 1);
    CommandRun resumed = bench.typing("yes\n\n" + rest + "accept\n", "current").exits(0);
    assertTrue(resumed.out().contains("is under way since " + LocalDate.now()), resumed.out());
    assertTrue(resumed.out().contains("2      125 A rising"), resumed.out());
    assertFalse(resumed.out().contains("Technician code"), resumed.out());
    assertTrue(resumed.out().contains("Point 3 of 9: set 250 A, rising"), resumed.out());
    assertTrue(bench.only().isAccepted());
    assertEquals(9, bench.only().points().size());
  }

  @Test
  void shouldKeepItAndSaySoWhenNobodyTypesAnyMore() {
    talk("", "", "0", "").exits(1);
    assertTrue(bench.only().isUnderWay());
    assertEquals(1, bench.only().points().size());
  }

  @Test
  void shouldBeGivenUpForAnotherOne() {
    talk("", "", "0", "leave").exits(0);
    talk("no", "wrong clamp", "", "leave").exits(0);
    CalibrationRecord first = bench.book.history().find(1);
    assertEquals(Ending.ABANDONED, first.finish().ending());
    assertEquals("wrong clamp", first.finish().note());
    assertTrue(bench.book.history().find(2).isUnderWay());
  }

  @Test
  void shouldBeGivenUpInTheMiddle() {
    talk("", "", "0", "abandon load bank broke").exits(0);
    assertEquals("load bank broke", bench.only().finish().note());
    assertEquals(1, bench.only().points().size());
  }

  @Test
  void shouldTakeOtherLevelsAndRefuseTooFew() {
    CommandRun run = talk("0 100", "0 100 200 300 400,5 450", "yes", "leave").exits(0);
    assertTrue(run.out().contains("at least 5 numbers are needed"), run.out());
    assertTrue(run.out().contains("Point 1 of 11"), run.out());
  }

  @Test
  void shouldEndAsRefusedOnlyIfThePersonSaysSo() {
    String skipped = "\n".concat("skip\n".repeat(8)) + "\n0\n?\naccept\nend\n";
    CommandRun run = bench.typing(skipped, "current", CalibrateBench.meter()).exits(1);
    assertTrue(run.out().contains("It cannot be accepted"), run.out());
    assertTrue(run.out().contains("no such word: accept"), run.out());
    assertEquals(Ending.REFUSED, bench.only().finish().ending());
    assertNull(bench.only().finish().scale());
  }

  @Test
  void shouldExplainItsWords() {
    CommandRun run = talk("", "?", "list", "juggle", "leave").exits(0);
    assertTrue(run.out().contains("discard N REASON  throw point N away"), run.out());
    assertTrue(run.out().contains("no points yet"), run.out());
    assertTrue(run.out().contains("no such word: juggle"), run.out());
  }
}
