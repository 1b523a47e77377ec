package org.boothlamp.report;

import static org.boothlamp.report.RunBuilder.run;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.LocalTime;
import java.util.List;
import org.boothlamp.report.ShiftTime.Basis;
import org.junit.jupiter.api.Test;

class ShiftTimeTest {

  private static final ShiftHours MORNING =
      new ShiftHours("morning", LocalTime.of(7, 0), LocalTime.of(12, 0));
  private static final ShiftHours NIGHT =
      new ShiftHours("night", LocalTime.of(22, 0), LocalTime.of(6, 0));
  private static final long MUCH_LATER = Long.MAX_VALUE;
  private static final double HOUR = 3_600;

  private static ShiftRecords runsAt(LocalDateTime... starts) {
    return new ShiftRecords(
        List.of(starts).stream()
            .map(one -> run().at(one.atZone(EveningShift.ZONE)).build())
            .toList(),
        List.of(),
        List.of());
  }

  private static LocalDateTime on(int day, int hour, int minute) {
    return LocalDate.of(2026, 3, day).atTime(hour, minute);
  }

  private static ShiftSpan days(int first, int last) {
    return ShiftSpan.days(
        LocalDate.of(2026, 3, first), LocalDate.of(2026, 3, last), EveningShift.ZONE);
  }

  private static long millis(LocalDateTime time) {
    return time.atZone(EveningShift.ZONE).toInstant().toEpochMilli();
  }

  @Test
  void shouldCountTheShiftsInWhichSomethingWasWelded() {
    ShiftTime time =
        ShiftTime.of(
            runsAt(on(24, 8, 0), on(25, 9, 0)), days(24, 26), List.of(MORNING, NIGHT), MUCH_LATER);
    assertEquals(Basis.SHIFTS, time.basis());
    assertEquals(List.of("morning"), time.names());
    assertEquals(10 * HOUR, time.seconds());
  }

  @Test
  void shouldEndAShiftThatIsNotOverNow() {
    ShiftTime time =
        ShiftTime.of(runsAt(on(25, 8, 0)), days(25, 25), List.of(MORNING), millis(on(25, 9, 30)));
    assertEquals(2.5 * HOUR, time.seconds());
  }

  @Test
  void shouldCutAShiftOverMidnightAtTheSpan() {
    ShiftTime time =
        ShiftTime.of(runsAt(on(25, 1, 0), on(25, 23, 0)), days(25, 25), List.of(NIGHT), MUCH_LATER);
    assertEquals(8 * HOUR, time.seconds(), "midnight to 6, and 22 to midnight");
  }

  @Test
  void shouldTakeTheTimesAskedForWithoutShifts() {
    ShiftSpan span = ShiftSpan.between(on(25, 17, 0), on(25, 21, 0), EveningShift.ZONE);
    ShiftTime time = ShiftTime.of(runsAt(on(25, 18, 0)), span, List.of(MORNING), MUCH_LATER);
    assertEquals(Basis.ASKED, time.basis());
    assertEquals(4 * HOUR, time.seconds());
  }

  @Test
  void shouldTakeEachDayFromItsFirstContactToTheEndOfItsLast() {
    // a run lasts 10 s
    ShiftTime time =
        ShiftTime.of(
            runsAt(on(24, 8, 0), on(24, 9, 0), on(25, 10, 0)), days(24, 25), List.of(), MUCH_LATER);
    assertEquals(Basis.FIRST_TO_LAST, time.basis());
    assertEquals(HOUR + 10 + 10, time.seconds());
  }

  @Test
  void shouldHaveNoLengthWithoutAnyContact() {
    assertEquals(0, ShiftTime.of(runsAt(), days(25, 25), List.of(MORNING), MUCH_LATER).seconds());
  }

  /** Clocks went forward on 2026-03-29 at 02:00. */
  @Test
  void shouldKnowThatANightCanBeAnHourShort() {
    ShiftTime time = ShiftTime.of(runsAt(on(29, 1, 0)), days(28, 29), List.of(NIGHT), MUCH_LATER);
    assertEquals(7 * HOUR, time.seconds());
  }
}
