package org.boothlamp.calibration;

import java.util.List;
import org.boothlamp.judging.ExpandedUncertainty;

/**
 * How far a single calibrated reading can be trusted, as a function of the reading: the uncertainty
 * of a reading taken later in the booth as long and as carefully as the calibration's points were.
 *
 * <p>The scatter about the line holds noise of sensor and load; the loop's mean width was taken out
 * of it and comes back as a limit, for in use nobody knows on which side of the loop the sensor is.
 * Influences with limits count as rectangular: where they outweigh the scatter, U covers more than
 * it states, never less. Immutable.
 */
public final class UncertaintyModel {

  public static final String REPEATABILITY = "repeatability";
  public static final String FIT = "fit";
  public static final String METER = "reference meter";
  public static final String METER_RESOLUTION = "reference meter's resolution";
  public static final String SENSOR_RESOLUTION = "sensor's resolution";
  public static final String HYSTERESIS = "hysteresis";
  public static final String TEMPERATURE = "temperature";

  private static final List<String> REFERENCE = List.of(METER, METER_RESOLUTION);
  private static final List<String> PROCESS =
      List.of(REPEATABILITY, FIT, METER, METER_RESOLUTION, SENSOR_RESOLUTION);

  /** Places at which the range is looked at for its largest coverage factor. */
  private static final int PLACES = 400;

  private final StraightLine line;
  private final double noisiestFactor;
  private final ReferenceMeter meter;
  private final double sensorResolution;
  private final TemperatureAllowance temperature;
  private final double low;
  private final double high;

  private UncertaintyModel(
      CalibrationRun run, CalibrationResult result, TemperatureAllowance temperature) {
    this.line = result.line();
    this.noisiestFactor = result.noisiestFactor();
    this.meter = run.meter();
    this.sensorResolution = run.sensorResolution();
    this.temperature = temperature;
    List<CalibrationPoint> kept = run.kept();
    double lowest = kept.stream().mapToDouble(CalibrationPoint::reference).min().orElse(0);
    double highest = kept.stream().mapToDouble(CalibrationPoint::reference).max().orElse(0);
    this.high = rangeEnd(highest, run.fullScale());
    this.low = 0 - rangeEnd(-lowest, run.fullScale());
  }

  static UncertaintyModel of(
      CalibrationRun run, CalibrationResult result, TemperatureAllowance temperature) {
    return new UncertaintyModel(run, result, temperature);
  }

  /** Full scale on a side that was calibrated, 0 on one that was only touched about zero. */
  private static double rangeEnd(double farthest, double fullScale) {
    return farthest > CalibrationRules.ZERO_SHARE * fullScale ? Math.max(farthest, fullScale) : 0;
  }

  /** Lowest reading the uncertainty is stated for: 0, or minus full scale or beyond. */
  public double low() {
    return low;
  }

  /** Highest reading the uncertainty is stated for: 0, or full scale or beyond. */
  public double high() {
    return high;
  }

  /** The whole budget at a calibrated reading. */
  public UncertaintyBudget at(double reading) {
    double nominal = line.nominalAt(reading);
    double freedom = line.degreesOfFreedom();
    double scatter = line.residualStandardDeviation() * noisiestFactor;
    return UncertaintyBudget.of(
        reading,
        List.of(
            new UncertaintyLine(REPEATABILITY, Distribution.NORMAL, scatter, 1, freedom),
            new UncertaintyLine(
                FIT, Distribution.NORMAL, line.standardUncertaintyAt(nominal), 1, freedom)),
        List.of(
            UncertaintyLine.limit(METER, meter.errorLimit(reading), 1),
            UncertaintyLine.limit(METER_RESOLUTION, meter.resolution() / 2, 1),
            UncertaintyLine.limit(SENSOR_RESOLUTION, sensorResolution / 2, line.gain()),
            UncertaintyLine.limit(HYSTERESIS, Math.abs(line.loopWidth()) / 2, 1),
            UncertaintyLine.limit(TEMPERATURE, temperature.halfWidth(reading), 1)));
  }

  /** U at a calibrated reading, in amps or volts. */
  public double expandedAt(double reading) {
    return at(reading).expanded();
  }

  /** Expanded uncertainty (k = 2) of the reference meter alone, with its resolution. */
  public double referenceExpandedAt(double reading) {
    return 2 * at(reading).combinedOf(REFERENCE);
  }

  /** Expanded uncertainty of the calibration itself, without what happens to the sensor later. */
  public double processExpandedAt(double reading) {
    UncertaintyBudget budget = at(reading);
    return budget.coverageFactor() * budget.combinedOf(PROCESS);
  }

  /**
   * The uncertainty as judging takes it, at no reading of the range below {@link #expandedAt}. The
   * combined uncertainty on either side of zero is a root of a sum of squared straight lines and
   * therefore convex: a line above it at both ends is above it between them.
   */
  public ExpandedUncertainty bound() {
    double factor = largestFactor();
    double atZero = factor * at(0).combined();
    double slope = Math.max(slope(high, atZero, factor), slope(low, atZero, factor));
    return new ExpandedUncertainty(atZero, Math.max(0, slope));
  }

  private double slope(double end, double atZero, double factor) {
    return end == 0 ? 0 : (factor * at(end).combined() - atZero) / Math.abs(end);
  }

  /** Degrees of freedom a shade below the least found, so that none between two places is less. */
  private double largestFactor() {
    double least = Double.POSITIVE_INFINITY;
    for (int i = 0; i <= PLACES; i++) {
      double reading = low + (high - low) * i / PLACES;
      least = Math.min(least, at(reading).effectiveDegreesOfFreedom());
    }
    double shaded = Math.max(line.degreesOfFreedom(), 0.999 * least);
    return Coverage.factor(shaded, Coverage.PROBABILITY);
  }
}
