package org.boothlamp.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.ZoneId;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Dates of clock changes in Berlin: IANA time zone database, 2026-03-29 and 2026-10-25. */
class ShiftSpanTest {

  private static final ZoneId BERLIN = ZoneId.of("Europe/Berlin");
  private static final LocalDate TODAY = LocalDate.of(2026, 3, 30);

  @ParameterizedTest
  @CsvSource({"2026-03-28, 24", "2026-03-29, 23", "2026-10-25, 25"})
  void shouldGiveADayTheHoursItHas(LocalDate day, int hours) {
    assertEquals(hours, hours(ShiftSpan.today(day, BERLIN)));
  }

  @Test
  void shouldStartADayWhoseMidnightIsSkippedAtItsFirstMoment() {
    // Beirut moves its clocks at midnight: 2026-03-29 begins at 01:00, +03:00
    ShiftSpan span = ShiftSpan.today(LocalDate.of(2026, 3, 29), ZoneId.of("Asia/Beirut"));
    assertEquals(Instant.parse("2026-03-28T22:00:00Z").toEpochMilli(), span.fromWallMillis());
    assertEquals(23, hours(span));
    assertEquals("2026-03-29", span.words());
  }

  @ParameterizedTest
  @CsvSource({
    "today,                              2026-03-29T22:00:00Z, 2026-03-30T22:00:00Z",
    "TODAY,                              2026-03-29T22:00:00Z, 2026-03-30T22:00:00Z",
    "yesterday,                          2026-03-28T23:00:00Z, 2026-03-29T22:00:00Z",
    "2026-03-29,                         2026-03-28T23:00:00Z, 2026-03-29T22:00:00Z",
    "2026-03-01..2026-03-29,             2026-02-28T23:00:00Z, 2026-03-29T22:00:00Z",
    "2026-03-01 .. today,                2026-02-28T23:00:00Z, 2026-03-30T22:00:00Z",
    "2026-03-29T07:00..2026-03-29T15:00, 2026-03-29T05:00:00Z, 2026-03-29T13:00:00Z",
    "2026-03-29T07:00:30..2026-03-29,    2026-03-29T05:00:30Z, 2026-03-29T22:00:00Z",
  })
  void shouldReadWhatAPersonTypes(String typed, Instant from, Instant until) {
    assertEquals(
        new ShiftSpan(from.toEpochMilli(), until.toEpochMilli(), BERLIN),
        ShiftSpan.parse(typed, TODAY, BERLIN));
  }

  @Test
  void shouldTakeASkippedTimeAsTheMomentOfTheSkip() {
    // 02:30 does not exist: the clocks go from 02:00 to 03:00, 01:00Z
    ShiftSpan span = ShiftSpan.parse("2026-03-29T02:30..2026-03-29T04:00", TODAY, BERLIN);
    assertEquals(Instant.parse("2026-03-29T01:00:00Z").toEpochMilli(), span.fromWallMillis());
    assertEquals(1, hours(span));
  }

  @Test
  void shouldHoldTheWholeOfAnHourThatComesTwice() {
    // 02:00 to 03:00 comes twice
    ShiftSpan span =
        ShiftSpan.between(
            LocalDateTime.of(2026, 10, 25, 2, 0), LocalDateTime.of(2026, 10, 25, 2, 59), BERLIN);
    assertEquals(Instant.parse("2026-10-25T00:00:00Z").toEpochMilli(), span.fromWallMillis());
    assertEquals(Instant.parse("2026-10-25T01:59:00Z").toEpochMilli(), span.untilWallMillis());
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "2026-02-30 | span \"2026-02-30\": \"2026-02-30\" is no day that exists; write today,"
            + " yesterday, 2026-03-29, 2026-03-01..2026-03-29 or"
            + " 2026-03-29T07:00..2026-03-29T15:00",
        "tomorrow | span \"tomorrow\": \"tomorrow\" is no day that exists; write today,"
            + " yesterday, 2026-03-29, 2026-03-01..2026-03-29 or"
            + " 2026-03-29T07:00..2026-03-29T15:00",
        "2026-03-29T25:00..today | span \"2026-03-29T25:00..today\": \"2026-03-29T25:00\" is no"
            + " time of a day that exists; write today, yesterday, 2026-03-29,"
            + " 2026-03-01..2026-03-29 or 2026-03-29T07:00..2026-03-29T15:00",
        "2026-03-29..2026-03-01 | span \"2026-03-29..2026-03-01\": the end must be after the"
            + " start; write the earlier one first",
        "2026-03-29T07:00..2026-03-29T07:00 | span \"2026-03-29T07:00..2026-03-29T07:00\": the"
            + " end must be after the start; write the earlier one first",
        "2026-03-29T07:00 | span \"2026-03-29T07:00\": a time needs an end as well; write"
            + " 2026-03-29T07:00..LAST",
        "2026-03-29.. | span \"2026-03-29..\": \"\" is no day that exists; write today,"
            + " yesterday, 2026-03-29, 2026-03-01..2026-03-29 or"
            + " 2026-03-29T07:00..2026-03-29T15:00",
      })
  void shouldSayWhatIsWrongWithASpanAndWhatToWrite(String typed, String message) {
    IllegalArgumentException refused =
        assertThrows(IllegalArgumentException.class, () -> ShiftSpan.parse(typed, TODAY, BERLIN));
    assertEquals(message, refused.getMessage());
  }

  @Test
  void shouldRefuseDaysInTheWrongOrder() {
    assertThrows(
        IllegalArgumentException.class, () -> ShiftSpan.days(TODAY, TODAY.minusDays(1), BERLIN));
  }

  @ParameterizedTest
  @CsvSource({
    "2026-03-29, 2026-03-29, false",
    "2026-03-01..2026-03-29, 2026-03-01 to 2026-03-29, true",
    "2026-03-29T07:00..2026-03-29T15:00, 2026-03-29 07:00 to 2026-03-29 15:00, false",
    "2026-03-29T22:00..2026-03-30T06:00:15, 2026-03-29 22:00 to 2026-03-30 06:00:15, true",
  })
  void shouldTellTheSpanInWords(String typed, String words, boolean severalDays) {
    ShiftSpan span = ShiftSpan.parse(typed, TODAY, BERLIN);
    assertEquals(words, span.words());
    assertEquals(severalDays, span.hasSeveralDays());
  }

  private static double hours(ShiftSpan span) {
    return (span.untilWallMillis() - span.fromWallMillis()) / 3_600_000.0;
  }
}
