package org.boothlamp.calibration;

import java.time.LocalDate;
import java.util.List;
import org.boothlamp.signal.ChannelScale;

/**
 * What is known before the first point is taken. Immutable.
 *
 * @param booth booth id
 * @param channel which sensor
 * @param nominal counts to amps or volts by the data sheet; the fit corrects it
 * @param fullScale the largest value the sensor is to measure, in amps or volts, above 0
 * @param date local day of the calibration
 * @param startedWallMillis time of day at the start, ms since the epoch
 * @param technicianCode who does it, never a name
 * @param meter what it is held against
 * @param inUse the scale the booth measured with until now, for the errors as found
 * @param inUseNumber number of the calibration behind {@code inUse}; 0 if it is the nominal scale
 * @param rules what it must come up to
 */
public record CalibrationHead(
    String booth,
    Channel channel,
    ChannelScale nominal,
    double fullScale,
    LocalDate date,
    long startedWallMillis,
    String technicianCode,
    ReferenceMeter meter,
    ChannelScale inUse,
    long inUseNumber,
    CalibrationRules rules) {

  /** The run these facts and the points make. */
  public CalibrationRun run(List<CalibrationPoint> points) {
    return new CalibrationRun(channel, nominal, fullScale, date, technicianCode, meter, points);
  }
}
