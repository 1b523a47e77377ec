package org.boothlamp.calibration;

import java.util.List;

/**
 * One numbered calibration as the log holds it: under way, ended, withdrawn. Immutable.
 *
 * @param number from 1, never used twice, one row of numbers for both channels of a booth
 * @param head what was known before the first point
 * @param points in the order they were taken, thrown-away ones included
 * @param finish how it ended; null while it is under way
 * @param withdrawal null unless it was withdrawn
 */
public record CalibrationRecord(
    long number,
    CalibrationHead head,
    List<CalibrationPoint> points,
    CalibrationFinish finish,
    Withdrawal withdrawal) {

  public CalibrationRecord {
    points = List.copyOf(points);
  }

  public Channel channel() {
    return head.channel();
  }

  public boolean isUnderWay() {
    return finish == null;
  }

  public boolean isAccepted() {
    return finish != null && finish.ending() == CalibrationFinish.Ending.ACCEPTED;
  }

  /** True if the booth may scale by it at a time of day, ms since the epoch. */
  public boolean isGoodAt(long wallMillis) {
    return isAccepted()
        && finish.wallMillis() <= wallMillis
        && (withdrawal == null || wallMillis < withdrawal.fromWallMillis());
  }

  /** Everything that follows from the points, computed again. */
  public CalibrationOutcome evaluate() {
    return Calibration.evaluate(head.run(points), head.inUse(), head.rules());
  }
}
