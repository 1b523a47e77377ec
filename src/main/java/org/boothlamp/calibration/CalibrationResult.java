package org.boothlamp.calibration;

import java.util.List;
import org.boothlamp.signal.ChannelScale;

/**
 * What the fit says of the sensor. Values are in amps or volts. Immutable.
 *
 * @param line nominal reading to reference
 * @param rSquared share of the references' variance that the line explains
 * @param largestResidual largest distance of a point from the line
 * @param linearityError largest distance of a level from the line, rising and falling averaged
 * @param hysteresis largest difference between rising and falling at one level; NaN if no level was
 *     approached both ways
 * @param noisiestFactor scatter of the noisiest point over that of the mean one, by their weights;
 *     1 in an ordinary fit
 * @param lackOfFit whether the line is curved
 * @param residuals used points in the order they were taken
 */
public record CalibrationResult(
    StraightLine line,
    double rSquared,
    double largestResidual,
    double linearityError,
    double hysteresis,
    double noisiestFactor,
    LackOfFit lackOfFit,
    List<PointResidual> residuals) {

  public CalibrationResult {
    residuals = List.copyOf(residuals);
  }

  /** Points flagged as outliers. */
  public List<PointResidual> outliers() {
    return residuals.stream().filter(PointResidual::outlier).toList();
  }

  /**
   * The scale that gives the reference's values: {@code offset + gain * nominal}.
   *
   * @param nominal the scale the points were read with
   */
  public ChannelScale calibrate(ChannelScale nominal) {
    double unitsPerCount = line.gain() * nominal.unitsPerCount();
    return new ChannelScale(unitsPerCount, nominal.zeroCount() - line.offset() / unitsPerCount);
  }
}
