package org.boothlamp.calibration;

import java.time.LocalDate;
import java.util.List;
import org.boothlamp.signal.ChannelScale;

/**
 * All that was taken down in one calibration, before anything is made of it. Immutable.
 *
 * @param channel which sensor
 * @param nominal counts to amps or volts by the data sheet; the fit corrects it
 * @param fullScale the largest value the sensor is to measure, in amps or volts, above 0
 * @param date local day of the calibration
 * @param technicianCode who did it, never a name
 * @param meter what it was held against
 * @param points in the order they were taken, thrown-away ones included
 */
public record CalibrationRun(
    Channel channel,
    ChannelScale nominal,
    double fullScale,
    LocalDate date,
    String technicianCode,
    ReferenceMeter meter,
    List<CalibrationPoint> points) {

  public CalibrationRun {
    if (!(fullScale > 0) || Double.isInfinite(fullScale)) {
      throw new IllegalArgumentException(
          "full scale must be above 0: fullScale=" + fullScale + "; give the sensor's range");
    }
    points = List.copyOf(points);
  }

  /** The points that are not thrown away, in the order they were taken. */
  public List<CalibrationPoint> kept() {
    return points.stream().filter(point -> !point.isDiscarded()).toList();
  }

  /** The same run with other points. */
  public CalibrationRun withPoints(List<CalibrationPoint> others) {
    return new CalibrationRun(channel, nominal, fullScale, date, technicianCode, meter, others);
  }

  /** One step of the sensor's converter by its nominal scale, in amps or volts, above 0. */
  public double sensorResolution() {
    return Math.abs(nominal.unitsPerCount());
  }
}
