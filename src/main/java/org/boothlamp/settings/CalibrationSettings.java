package org.boothlamp.settings;

import org.boothlamp.calibration.CalibrationRules;
import org.boothlamp.calibration.Channel;
import org.boothlamp.calibration.TemperatureAllowance;

/**
 * What a calibration must come up to, and what an old one is worth. Immutable.
 *
 * @param rules for both channels, without the temperature
 * @param currentFullScaleAmps the largest current the sensor is to measure; NaN if not said
 * @param voltageFullScaleVolts likewise the voltage; NaN if not said
 * @param currentTemperature what temperature may do to the clamp in use
 * @param voltageTemperature what it may do to the divider
 * @param overdueFactor by what U of an overdue calibration is multiplied, at least 1
 */
public record CalibrationSettings(
    CalibrationRules rules,
    double currentFullScaleAmps,
    double voltageFullScaleVolts,
    TemperatureAllowance currentTemperature,
    TemperatureAllowance voltageTemperature,
    double overdueFactor) {

  /** The rules for one channel. */
  public CalibrationRules rules(Channel channel) {
    return rules.withTemperature(
        channel == Channel.CURRENT ? currentTemperature : voltageTemperature);
  }

  /** Full scale of one channel, in amps or volts; NaN if the settings do not say it. */
  public double fullScale(Channel channel) {
    return channel == Channel.CURRENT ? currentFullScaleAmps : voltageFullScaleVolts;
  }
}
