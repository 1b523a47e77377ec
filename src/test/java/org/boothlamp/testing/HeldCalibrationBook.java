package org.boothlamp.testing;

import java.util.ArrayList;
import java.util.List;
import org.boothlamp.calibration.CalibrationBook;
import org.boothlamp.calibration.CalibrationCheck;
import org.boothlamp.calibration.CalibrationFinish;
import org.boothlamp.calibration.CalibrationHead;
import org.boothlamp.calibration.CalibrationHistory;
import org.boothlamp.calibration.CalibrationPoint;
import org.boothlamp.calibration.CalibrationRecord;
import org.boothlamp.calibration.Channel;
import org.boothlamp.calibration.Withdrawal;

/**
 * A book that holds everything in memory, also beyond its closing. Safe to share: one command
 * writes while a test looks.
 */
public final class HeldCalibrationBook implements CalibrationBook {

  private final List<CalibrationRecord> records = new ArrayList<>();
  private final List<CalibrationCheck> checks = new ArrayList<>();

  @Override
  public synchronized long begin(CalibrationHead head) {
    long number = records.size() + 1L;
    records.add(new CalibrationRecord(number, head, List.of(), null, null));
    return number;
  }

  @Override
  public synchronized void addPoint(long number, CalibrationPoint point) {
    CalibrationRecord record = underWay(number);
    List<CalibrationPoint> points = new ArrayList<>(record.points());
    points.add(point);
    put(record, points);
  }

  @Override
  public synchronized void discard(long number, int index, String reason) {
    CalibrationRecord record = underWay(number);
    if (index < 0 || index >= record.points().size() || record.points().get(index).isDiscarded()) {
      throw new IllegalArgumentException(
          "calibration " + number + " has no used point " + index + "; look at its points");
    }
    List<CalibrationPoint> points = new ArrayList<>(record.points());
    points.set(index, points.get(index).discarded(reason));
    put(record, points);
  }

  @Override
  public synchronized void finish(long number, CalibrationFinish finish) {
    CalibrationRecord record = underWay(number);
    set(new CalibrationRecord(number, record.head(), record.points(), finish, null));
  }

  @Override
  public synchronized void withdraw(long number, Withdrawal withdrawal) {
    CalibrationRecord record = find(number);
    if (!record.isAccepted() || record.withdrawal() != null) {
      throw new IllegalStateException(
          "calibration " + number + " is not accepted, or withdrawn before");
    }
    set(new CalibrationRecord(number, record.head(), record.points(), record.finish(), withdrawal));
  }

  @Override
  public synchronized void addCheck(CalibrationCheck check) {
    checks.add(check);
  }

  @Override
  public synchronized CalibrationHistory history() {
    return new CalibrationHistory(records);
  }

  @Override
  public synchronized List<CalibrationCheck> checks(Channel channel) {
    return checks.stream().filter(check -> check.channel() == channel).toList();
  }

  @Override
  public void close() {
    // the next command finds everything as it was
  }

  private CalibrationRecord find(long number) {
    CalibrationRecord record = history().find(number);
    if (record == null) {
      throw new IllegalArgumentException("there is no calibration " + number);
    }
    return record;
  }

  private CalibrationRecord underWay(long number) {
    CalibrationRecord record = find(number);
    if (!record.isUnderWay()) {
      throw new IllegalStateException("calibration " + number + " has ended before");
    }
    return record;
  }

  private void put(CalibrationRecord record, List<CalibrationPoint> points) {
    set(new CalibrationRecord(record.number(), record.head(), points, null, null));
  }

  private void set(CalibrationRecord record) {
    records.set((int) record.number() - 1, record);
  }
}
