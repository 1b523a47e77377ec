package org.boothlamp.boothlog;

import java.time.Instant;
import java.time.ZoneId;
import java.time.ZonedDateTime;
import org.boothlamp.monitor.BoothClock;
import org.boothlamp.monitor.ClockTrust;
import org.boothlamp.monitor.NanoClock;
import org.boothlamp.monitor.WallClock;

/**
 * What the log's writer knows of time. Immutable.
 *
 * @param nano for lengths
 * @param wall for labels
 * @param zone in which a day begins
 * @param kept the booth's clock, which the writer keeps right and labels its rows by; null if the
 *     entries bring their times of day along and these are right
 * @param trust whether the machine's clock can be believed
 */
public record LogClocks(
    NanoClock nano, WallClock wall, ZoneId zone, BoothClock kept, ClockTrust trust) {

  /** Clocks that are right. */
  public LogClocks(NanoClock nano, WallClock wall, ZoneId zone) {
    this(nano, wall, zone, null, ClockTrust.ALWAYS);
  }

  /** A booth's clock on a machine whose own can be wrong. */
  public static LogClocks keeping(BoothClock kept, ClockTrust trust) {
    return new LogClocks(NanoClock.SYSTEM, kept, ZoneId.systemDefault(), kept, trust);
  }

  /** The machine's clocks and its time zone. */
  public static LogClocks system() {
    return new LogClocks(NanoClock.SYSTEM, WallClock.SYSTEM, ZoneId.systemDefault());
  }

  /** Now, outside the sampler. */
  Moment now() {
    return new Moment(wall.epochMillis(), nano.nanoTime(), Double.NaN);
  }

  /** Now, on the local clock. */
  public ZonedDateTime localNow() {
    return Instant.ofEpochMilli(wall.epochMillis()).atZone(zone);
  }

  /** Time of day at which today began, ms since the epoch. */
  long startOfTodayMillis() {
    return localNow().toLocalDate().atStartOfDay(zone).toInstant().toEpochMilli();
  }
}
