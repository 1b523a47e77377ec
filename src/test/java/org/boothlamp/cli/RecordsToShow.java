package org.boothlamp.cli;

import java.lang.reflect.Proxy;
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
import org.boothlamp.report.CalibrationSamples;

/** A book that can only be read, with some invented calibrations in it. */
final class RecordsToShow implements CalibrationBook {

  private final List<CalibrationRecord> records;
  private boolean closed;

  RecordsToShow(CalibrationRecord... records) {
    this.records = List.of(records);
  }

  /** Parts that have this book and nothing else. */
  Parts parts() {
    return (Parts)
        Proxy.newProxyInstance(
            Parts.class.getClassLoader(),
            new Class<?>[] {Parts.class},
            (proxy, method, arguments) -> {
              if (method.getName().equals("calibrationBook")) {
                return this;
              }
              throw new AssertionError("nobody needs " + method.getName() + " to show a record");
            });
  }

  boolean isClosed() {
    return closed;
  }

  @Override
  public CalibrationHistory history() {
    return new CalibrationHistory(records);
  }

  @Override
  public List<CalibrationCheck> checks(Channel channel) {
    return channel == Channel.CURRENT ? CalibrationSamples.checks() : List.of();
  }

  @Override
  public void close() {
    closed = true;
  }

  @Override
  public long begin(CalibrationHead head) {
    throw new AssertionError("showing begins nothing");
  }

  @Override
  public void addPoint(long number, CalibrationPoint point) {
    throw new AssertionError("showing adds nothing");
  }

  @Override
  public void discard(long number, int index, String reason) {
    throw new AssertionError("showing throws nothing away");
  }

  @Override
  public void finish(long number, CalibrationFinish finish) {
    throw new AssertionError("showing ends nothing");
  }

  @Override
  public void withdraw(long number, Withdrawal withdrawal) {
    throw new AssertionError("showing withdraws nothing");
  }

  @Override
  public void addCheck(CalibrationCheck check) {
    throw new AssertionError("showing checks nothing");
  }
}
