package org.boothlamp.testing;

import java.nio.file.Path;
import java.time.LocalDate;
import org.boothlamp.boothlog.BoothCalibrations;
import org.boothlamp.calibration.CalibrationBook;
import org.boothlamp.calibration.CalibrationCheck;
import org.boothlamp.calibration.CalibrationFinish;
import org.boothlamp.calibration.CalibrationPoint;
import org.boothlamp.calibration.Channel;
import org.boothlamp.calibration.Direction;
import org.boothlamp.calibration.Withdrawal;
import org.boothlamp.judging.ExpandedUncertainty;
import org.boothlamp.signal.ChannelScale;

/**
 * Writes calibrations of every kind into a log, from the day before {@link LogEntries}: 1 current,
 * 2 voltage (refused), 3 voltage, 4 current; 4 is withdrawn, and after it 1.
 */
public final class WrittenCalibrations {

  private static final LocalDate DAY = LocalDate.of(2026, 3, 1);
  private static final long HOUR_MILLIS = 3_600_000;
  private static final long BEGUN_WALL_MILLIS = LogEntries.FIRST_WALL_MILLIS - 24 * HOUR_MILLIS;
  private static final ChannelScale CURRENT = new ChannelScale(0.25, 2048);
  private static final ChannelScale VOLTAGE = new ChannelScale(0.0123, -7.5);

  private WrittenCalibrations() {}

  /** Writes them all. */
  public static void write(Path log) {
    try (CalibrationBook book = BoothCalibrations.open(log)) {
      long first = current(book, 1, DAY.plusMonths(1));
      refused(book);
      voltage(book);
      long second = current(book, 4, DAY.plusYears(1));
      book.addCheck(check(Channel.CURRENT, second, 1.5));
      book.addCheck(check(Channel.VOLTAGE, 0, Double.NaN));
      withdraw(book, second);
      withdraw(book, first);
    }
  }

  private static long current(CalibrationBook book, int hour, LocalDate due) {
    long number = book.begin(Calibrations.head(Channel.CURRENT, CURRENT, DAY));
    book.addPoint(number, Calibrations.point(0, Direction.RISING));
    book.addPoint(
        number,
        new CalibrationPoint(
            200, Direction.RISING, 1000.1, Double.NaN, 9, Double.NaN, 199.7, null));
    book.addPoint(number, Calibrations.point(200, Direction.FALLING));
    book.discard(number, 1, "the clamp stood open");
    book.finish(number, accepted(hour, new ChannelScale(0.2517, 2046.3), due));
    return number;
  }

  private static void voltage(CalibrationBook book) {
    Calibrations.add(
        book,
        Calibrations.head(Channel.VOLTAGE, VOLTAGE, DAY),
        accepted(3, new ChannelScale(0.1 + 0.2, -7.25), DAY.plusYears(1)));
  }

  private static CalibrationFinish accepted(int hour, ChannelScale scale, LocalDate due) {
    return Calibrations.accepted(
        BEGUN_WALL_MILLIS + hour * HOUR_MILLIS, scale, new ExpandedUncertainty(1.1, 1 / 3.0), due);
  }

  private static void refused(CalibrationBook book) {
    book.finish(book.begin(Calibrations.head(Channel.VOLTAGE, VOLTAGE, DAY)), refusal());
  }

  /** An end that is no good one. */
  public static CalibrationFinish refusal() {
    return new CalibrationFinish(
        CalibrationFinish.Ending.REFUSED,
        BEGUN_WALL_MILLIS + 2 * HOUR_MILLIS,
        null,
        null,
        null,
        "too few levels; \"no\" \u00b5");
  }

  /** Begins one more of the voltage and leaves it under way; returns its number. */
  public static long begin(Path log) {
    try (CalibrationBook book = BoothCalibrations.open(log)) {
      long number = book.begin(Calibrations.head(Channel.VOLTAGE, VOLTAGE, DAY));
      book.addPoint(number, Calibrations.point(10, Direction.RISING));
      return number;
    }
  }

  private static CalibrationCheck check(Channel channel, long number, double deviation) {
    return new CalibrationCheck(
        channel, number, BEGUN_WALL_MILLIS, "K-2", "bench meter", 100.4, 100.1, deviation, 7, 2.5);
  }

  /** From the first hour of {@link LogEntries} on. */
  private static void withdraw(CalibrationBook book, long number) {
    long from = LogEntries.FIRST_WALL_MILLIS + number * 60_000;
    book.withdraw(number, new Withdrawal(from, from + HOUR_MILLIS, "K-3", "dropped no. " + number));
  }
}
