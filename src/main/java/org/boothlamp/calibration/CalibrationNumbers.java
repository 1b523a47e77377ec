package org.boothlamp.calibration;

/**
 * Which calibrations scale a pair; 0 is the nominal scale. Immutable.
 *
 * @param current number of the current's calibration
 * @param voltage number of the voltage's calibration
 */
public record CalibrationNumbers(long current, long voltage) {

  /** Both channels by their nominal scale. */
  public static final CalibrationNumbers NONE = new CalibrationNumbers(0, 0);

  /** True if both channels have a calibration. */
  public boolean isComplete() {
    return current != 0 && voltage != 0;
  }

  /** The number of one channel. */
  public long of(Channel channel) {
    return channel == Channel.CURRENT ? current : voltage;
  }
}
