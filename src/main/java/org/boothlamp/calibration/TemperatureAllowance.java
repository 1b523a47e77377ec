package org.boothlamp.calibration;

/**
 * How far the sensor may move between the calibration's temperature and a booth's, as the half
 * width of what is possible. Immutable.
 *
 * @param zeroHalfWidth in amps or volts, at least 0
 * @param gainHalfWidth as a share of the reading, at least 0
 */
public record TemperatureAllowance(double zeroHalfWidth, double gainHalfWidth) {

  public static final TemperatureAllowance NONE = new TemperatureAllowance(0, 0);

  public TemperatureAllowance {
    if (!(zeroHalfWidth >= 0) || !(gainHalfWidth >= 0)) {
      throw new IllegalArgumentException(
          "temperature allowance must be at least 0: zeroHalfWidth="
              + zeroHalfWidth
              + ", gainHalfWidth="
              + gainHalfWidth);
    }
  }

  /** Half width at a reading, in its unit. */
  public double halfWidth(double reading) {
    return zeroHalfWidth + gainHalfWidth * Math.abs(reading);
  }
}
