package org.boothlamp.calibration;

import java.util.List;

/**
 * Where calibrations are kept. Each call is durable when it returns, and nothing written is ever
 * changed: a power cut loses at most the point that is being taken. Confined to one thread.
 */
public interface CalibrationBook extends AutoCloseable {

  /** Opens a new calibration and returns its number. */
  long begin(CalibrationHead head);

  /** Adds a point, as taken. */
  void addPoint(long number, CalibrationPoint point);

  /**
   * Keeps a point in the record and out of the fit.
   *
   * @param index of the point in the record's list, from 0
   * @throws IllegalArgumentException if there is no such point, or it was thrown away before
   */
  void discard(long number, int index, String reason);

  /**
   * Ends a calibration.
   *
   * @throws IllegalStateException if it has ended before
   */
  void finish(long number, CalibrationFinish finish);

  /**
   * Withdraws an accepted calibration.
   *
   * @throws IllegalStateException if it is not accepted, or withdrawn before
   */
  void withdraw(long number, Withdrawal withdrawal);

  /** Notes a one-point check. */
  void addCheck(CalibrationCheck check);

  /** All calibrations, as of now. */
  CalibrationHistory history();

  /** One-point checks of a channel in order of time. */
  List<CalibrationCheck> checks(Channel channel);

  @Override
  void close();
}
