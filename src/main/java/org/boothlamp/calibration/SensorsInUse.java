package org.boothlamp.calibration;

import org.boothlamp.judging.ChannelUncertainties;
import org.boothlamp.signal.PairScale;

/**
 * What both sensors measure by at a moment. Immutable.
 *
 * @param current the current's sensor
 * @param voltage the voltage's sensor
 */
public record SensorsInUse(SensorInUse current, SensorInUse voltage) {

  /** Scale of both channels. */
  public PairScale scale() {
    return new PairScale(current.scale(), voltage.scale());
  }

  /** U of both channels. */
  public ChannelUncertainties uncertainties() {
    return new ChannelUncertainties(
        current.uncertainty(),
        voltage.uncertainty(),
        current.isCalibrated() && voltage.isCalibrated());
  }

  /** Which calibrations scale the pairs. */
  public CalibrationNumbers numbers() {
    return new CalibrationNumbers(current.number(), voltage.number());
  }

  /** One of the two. */
  public SensorInUse of(Channel channel) {
    return channel == Channel.CURRENT ? current : voltage;
  }
}
