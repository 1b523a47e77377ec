package org.boothlamp.calibration;

import java.util.List;

/**
 * All calibrations of a booth, and which of them holds when. Immutable.
 *
 * @param records by rising number
 */
public record CalibrationHistory(List<CalibrationRecord> records) {

  /** Of a booth that was never calibrated. */
  public static final CalibrationHistory NONE = new CalibrationHistory(List.of());

  public CalibrationHistory {
    records = List.copyOf(records);
  }

  /**
   * The calibration to scale by at a time of day: the latest accepted one that is not withdrawn
   * then. After a withdrawal that is the one before it.
   *
   * @return null if there is none
   */
  public CalibrationRecord inUse(Channel channel, long wallMillis) {
    CalibrationRecord latest = null;
    for (CalibrationRecord record : records) {
      if (record.channel() == channel && record.isGoodAt(wallMillis)) {
        latest = record;
      }
    }
    return latest;
  }

  /**
   * A time of day, or a later one if this booth has calibrated or withdrawn later than that: a
   * clock that nobody has set yet stands in the past, and no calibration is from the future.
   */
  public long notBefore(long wallMillis) {
    long latest = wallMillis;
    for (CalibrationRecord record : records) {
      if (record.finish() != null) {
        latest = Math.max(latest, record.finish().wallMillis());
      }
      if (record.withdrawal() != null) {
        latest = Math.max(latest, record.withdrawal().wallMillis());
      }
    }
    return latest;
  }

  /** The calibration of this number, or null. */
  public CalibrationRecord find(long number) {
    return records.stream().filter(record -> record.number() == number).findFirst().orElse(null);
  }

  /** The one of a channel that was begun and not ended, or null. */
  public CalibrationRecord underWay(Channel channel) {
    CalibrationRecord latest = null;
    for (CalibrationRecord record : records) {
      if (record.channel() == channel && record.isUnderWay()) {
        latest = record;
      }
    }
    return latest;
  }
}
