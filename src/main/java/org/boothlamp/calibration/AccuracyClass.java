package org.boothlamp.calibration;

/**
 * The largest error a sensor may have: a share of full scale or of the reading, whichever is
 * larger. Immutable.
 *
 * @param name as settings and certificate show it
 * @param shareOfFullScale above 0: no sensor is right to nothing at zero
 * @param shareOfReading at least 0
 */
public record AccuracyClass(String name, double shareOfFullScale, double shareOfReading) {

  /**
   * Meters on welding power sources, 2.5 % of their largest value: a service department's summary
   * of IEC 60974-14, a secondary source.
   */
  public static final AccuracyClass STANDARD = new AccuracyClass("standard", 0.025, 0);

  public AccuracyClass {
    if (!(shareOfFullScale > 0) || !(shareOfReading >= 0)) {
      throw new IllegalArgumentException(
          "accuracy class \""
              + name
              + "\" needs a share of full scale above 0 and one of the reading from 0 on:"
              + " shareOfFullScale="
              + shareOfFullScale
              + ", shareOfReading="
              + shareOfReading);
    }
  }

  /** The largest error allowed at a reading, in the unit of both. */
  public double errorLimit(double reading, double fullScale) {
    return Math.max(shareOfFullScale * fullScale, shareOfReading * Math.abs(reading));
  }
}
