package org.boothlamp.report;

import java.time.DateTimeException;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.LocalTime;
import java.time.ZoneId;
import java.time.ZonedDateTime;
import java.time.format.DateTimeFormatter;
import java.time.zone.ZoneOffsetTransition;
import java.util.Locale;

/**
 * A span of local time. Days are the zone's own: 23 or 25 hours long when the clocks change.
 * Immutable.
 *
 * @param fromWallMillis start, ms since the epoch, inside the span
 * @param untilWallMillis end, ms since the epoch, no longer inside
 * @param zone whose clock the span was meant by
 */
public record ShiftSpan(long fromWallMillis, long untilWallMillis, ZoneId zone) {

  private static final String FORMS =
      "today, yesterday, 2026-03-29, 2026-03-01..2026-03-29 or"
          + " 2026-03-29T07:00..2026-03-29T15:00";

  private static final DateTimeFormatter MINUTE =
      DateTimeFormatter.ofPattern("uuuu-MM-dd HH:mm", Locale.ROOT);
  private static final DateTimeFormatter SECOND =
      DateTimeFormatter.ofPattern("uuuu-MM-dd HH:mm:ss", Locale.ROOT);

  public ShiftSpan {
    if (untilWallMillis <= fromWallMillis) {
      throw new IllegalArgumentException(
          "a span must end after it starts: from="
              + Instant.ofEpochMilli(fromWallMillis)
              + ", until="
              + Instant.ofEpochMilli(untilWallMillis)
              + "; give the earlier moment first");
    }
  }

  /** The whole of the day that is today. */
  public static ShiftSpan today(LocalDate today, ZoneId zone) {
    return days(today, today, zone);
  }

  /**
   * Whole days, both included.
   *
   * @throws IllegalArgumentException if the first is after the last
   */
  public static ShiftSpan days(LocalDate first, LocalDate last, ZoneId zone) {
    return new ShiftSpan(startOf(first, zone), endOf(last, zone), zone);
  }

  /**
   * From one local time until another. A time that the clocks skip means the moment they skip at; a
   * time that comes twice means the first at the start and the second at the end of the span.
   *
   * @throws IllegalArgumentException if the span would not end after it starts
   */
  public static ShiftSpan between(LocalDateTime from, LocalDateTime until, ZoneId zone) {
    return new ShiftSpan(startOf(from, zone), endOf(until, zone), zone);
  }

  /**
   * What a person typed: {@code today}, {@code yesterday}, a date, or two dates or times with two
   * dots between; a last date is included, a last time is not.
   *
   * @throws IllegalArgumentException if it is none of these; the message can be shown as it is
   */
  public static ShiftSpan parse(String typed, LocalDate today, ZoneId zone) {
    int dots = typed.indexOf("..");
    String first = (dots < 0 ? typed : typed.substring(0, dots)).strip();
    String last = (dots < 0 ? typed : typed.substring(dots + 2)).strip();
    if (dots < 0 && isTime(first)) {
      throw refused(typed, "a time needs an end as well", "write " + first + "..LAST");
    }
    long from = startOf(typed, first, today, zone);
    long until = endOf(typed, last, today, zone);
    if (until <= from) {
      throw refused(typed, "the end must be after the start", "write the earlier one first");
    }
    return new ShiftSpan(from, until, zone);
  }

  private static long startOf(String typed, String part, LocalDate today, ZoneId zone) {
    return isTime(part)
        ? startOf(time(typed, part), zone)
        : startOf(date(typed, part, today), zone);
  }

  private static long endOf(String typed, String part, LocalDate today, ZoneId zone) {
    return isTime(part) ? endOf(time(typed, part), zone) : endOf(date(typed, part, today), zone);
  }

  private static boolean isTime(String part) {
    return part.length() > 10 && Character.toUpperCase(part.charAt(10)) == 'T';
  }

  private static LocalDateTime time(String typed, String part) {
    try {
      return LocalDateTime.parse(part);
    } catch (DateTimeException unreadable) {
      throw refused(typed, "\"" + part + "\" is no time of a day that exists", "write " + FORMS);
    }
  }

  private static LocalDate date(String typed, String part, LocalDate today) {
    if (part.equalsIgnoreCase("today")) {
      return today;
    }
    if (part.equalsIgnoreCase("yesterday")) {
      return today.minusDays(1);
    }
    try {
      return LocalDate.parse(part);
    } catch (DateTimeException unreadable) {
      throw refused(typed, "\"" + part + "\" is no day that exists", "write " + FORMS);
    }
  }

  private static IllegalArgumentException refused(String typed, String rule, String nextMove) {
    return new IllegalArgumentException("span \"" + typed + "\": " + rule + "; " + nextMove);
  }

  private static long startOf(LocalDate day, ZoneId zone) {
    return day.atStartOfDay(zone).toInstant().toEpochMilli();
  }

  private static long endOf(LocalDate day, ZoneId zone) {
    return startOf(day.plusDays(1), zone);
  }

  private static long startOf(LocalDateTime time, ZoneId zone) {
    return moment(time, zone).withEarlierOffsetAtOverlap().toInstant().toEpochMilli();
  }

  private static long endOf(LocalDateTime time, ZoneId zone) {
    return moment(time, zone).withLaterOffsetAtOverlap().toInstant().toEpochMilli();
  }

  private static ZonedDateTime moment(LocalDateTime time, ZoneId zone) {
    ZoneOffsetTransition transition = zone.getRules().getTransition(time);
    boolean skipped = transition != null && transition.isGap();
    return skipped ? transition.getInstant().atZone(zone) : time.atZone(zone);
  }

  /** True if it touches more than one local day. */
  public boolean hasSeveralDays() {
    return !local(fromWallMillis).toLocalDate().equals(local(untilWallMillis - 1).toLocalDate());
  }

  /** The span for people: "2026-03-29", "2026-03-01 to 2026-03-29" or with times of day. */
  public String words() {
    return words("to");
  }

  /** The same in another language, whose word stands between two days or times. */
  String words(String to) {
    ZonedDateTime from = local(fromWallMillis);
    ZonedDateTime until = local(untilWallMillis);
    if (isDayStart(from) && isDayStart(until)) {
      LocalDate last = until.toLocalDate().minusDays(1);
      return last.equals(from.toLocalDate())
          ? from.toLocalDate().toString()
          : from.toLocalDate() + " " + to + " " + last;
    }
    return clock(from) + " " + to + " " + clock(until);
  }

  /** True if it begins and ends with a local day. */
  boolean isOfWholeDays() {
    return isDayStart(local(fromWallMillis)) && isDayStart(local(untilWallMillis));
  }

  private static boolean isDayStart(ZonedDateTime time) {
    return time.equals(time.toLocalDate().atStartOfDay(time.getZone()));
  }

  private static String clock(ZonedDateTime time) {
    boolean onMinute = time.toLocalTime().equals(LocalTime.of(time.getHour(), time.getMinute()));
    return (onMinute ? MINUTE : SECOND).format(time);
  }

  /** A moment on the zone's clock. */
  ZonedDateTime local(long wallMillis) {
    return Instant.ofEpochMilli(wallMillis).atZone(zone);
  }
}
