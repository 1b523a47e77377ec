package org.boothlamp.testing;

import java.time.LocalDate;
import java.util.List;
import org.boothlamp.calibration.CalibrationBook;
import org.boothlamp.calibration.CalibrationFinish;
import org.boothlamp.calibration.CalibrationHead;
import org.boothlamp.calibration.CalibrationPoint;
import org.boothlamp.calibration.CalibrationRecord;
import org.boothlamp.calibration.CalibrationRules;
import org.boothlamp.calibration.Channel;
import org.boothlamp.calibration.Direction;
import org.boothlamp.calibration.ReferenceMeter;
import org.boothlamp.calibration.Withdrawal;
import org.boothlamp.judging.ExpandedUncertainty;
import org.boothlamp.signal.ChannelScale;

/** Calibrations as a log would hold them, with the numbers a test wants. */
public final class Calibrations {

  private Calibrations() {}

  /** What is known before the first point. */
  public static CalibrationHead head(Channel channel, ChannelScale nominal, LocalDate date) {
    return new CalibrationHead(
        "B-07",
        channel,
        nominal,
        400,
        date,
        1_772_000_000_000L,
        "K-2",
        new ReferenceMeter("bench meter", "M-1", "C-77", date.minusMonths(3), 0.1, 3, 0.1),
        nominal,
        0,
        CalibrationRules.STANDARD);
  }

  /** A point of a level. */
  public static CalibrationPoint point(double level, Direction direction) {
    return new CalibrationPoint(level, direction, 5 * level, 1.5, 10_000, 0.25, level, null);
  }

  /** An accepted end. */
  public static CalibrationFinish accepted(
      long wallMillis, ChannelScale scale, ExpandedUncertainty uncertainty, LocalDate due) {
    return new CalibrationFinish(
        CalibrationFinish.Ending.ACCEPTED, wallMillis, scale, uncertainty, due, "");
  }

  /** Two points and an accepted end, in a book; returns the number. */
  public static long add(CalibrationBook book, CalibrationHead head, CalibrationFinish finish) {
    long number = book.begin(head);
    book.addPoint(number, point(0, Direction.RISING));
    book.addPoint(number, point(100, Direction.FALLING));
    book.finish(number, finish);
    return number;
  }

  /** A record without a book. */
  public static CalibrationRecord record(
      long number, CalibrationHead head, CalibrationFinish finish, Withdrawal withdrawal) {
    return new CalibrationRecord(
        number, head, List.of(point(0, Direction.RISING)), finish, withdrawal);
  }
}
