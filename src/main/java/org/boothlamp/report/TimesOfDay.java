package org.boothlamp.report;

import java.time.ZonedDateTime;

/** Moments for people, on the clock of the span's zone. */
public final class TimesOfDay {

  private TimesOfDay() {}

  /** "08:14:02". */
  public static String clock(ZonedDateTime time) {
    StringBuilder out = new StringBuilder(8);
    Numbers.appendPadded(out, time.getHour(), 2).append(':');
    Numbers.appendPadded(out, time.getMinute(), 2).append(':');
    return Numbers.appendPadded(out, time.getSecond(), 2).toString();
  }

  /** The time of day, with the date if the span has several. */
  public static String words(long wallMillis, ShiftSpan span) {
    ZonedDateTime time = span.local(wallMillis);
    return span.hasSeveralDays() ? time.toLocalDate() + " " + clock(time) : clock(time);
  }
}
