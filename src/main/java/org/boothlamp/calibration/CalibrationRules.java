package org.boothlamp.calibration;

/**
 * What a calibration must come up to. Immutable.
 *
 * @param accuracyClass the largest error allowed
 * @param weighting how the points count
 * @param smallestLevels different levels needed, at least 3
 * @param smallestSpanShare share of full scale the reference readings must span
 * @param largestLinearityShare share of full scale a level may lie off the line once the line is
 *     shown to be curved; below it, a significant curve is not worth a refusal
 * @param largestHysteresisShare share of full scale between rising and falling
 * @param smallestReferenceRatio error limit of the class over the reference meter's expanded
 *     uncertainty
 * @param temperature what temperature may do to the sensor in use
 * @param certificateMonths how long the reference meter's certificate is good for
 * @param calibrationMonths how long this calibration is good for
 */
public record CalibrationRules(
    AccuracyClass accuracyClass,
    Weighting weighting,
    int smallestLevels,
    double smallestSpanShare,
    double largestLinearityShare,
    double largestHysteresisShare,
    double smallestReferenceRatio,
    TemperatureAllowance temperature,
    int certificateMonths,
    int calibrationMonths) {

  /**
   * Five levels and a year: an instruction sheet that extracts EN 50504:2008, a secondary source.
   * Ratio 4: ANSI/NCSL Z540.3 clause 5.3 b), as a training slide quotes it. Span 80 %, linearity
   * 0.1 %, hysteresis 1 %: common practice, no source.
   */
  public static final CalibrationRules STANDARD =
      new CalibrationRules(
          AccuracyClass.STANDARD,
          Weighting.ORDINARY,
          5,
          0.8,
          0.001,
          0.01,
          4,
          TemperatureAllowance.NONE,
          12,
          12);

  /** A curve or an outlier is believed if chance alone would show it less often than this. */
  public static final double SIGNIFICANCE = 0.01;

  /** A reference within this share of full scale is a zero point. */
  static final double ZERO_SHARE = 0.01;

  /**
   * A gain outside these is no gain error but a wrong unit, lead or nominal scale; common practice,
   * no source.
   */
  static final double SMALLEST_GAIN = 0.8;

  static final double LARGEST_GAIN = 1.25;

  public CalibrationRules {
    if (smallestLevels < 3) {
      throw new IllegalArgumentException(
          "a curve shows from 3 levels on: smallestLevels=" + smallestLevels);
    }
    if (certificateMonths < 1 || calibrationMonths < 1) {
      throw new IllegalArgumentException(
          "months must be at least 1: certificateMonths="
              + certificateMonths
              + ", calibrationMonths="
              + calibrationMonths);
    }
    if (!(smallestSpanShare > 0 && smallestSpanShare <= 2)
        || !(largestLinearityShare >= 0)
        || !(largestHysteresisShare >= 0)
        || !(smallestReferenceRatio >= 0)) {
      throw new IllegalArgumentException(
          "calibration rule out of range: smallestSpanShare="
              + smallestSpanShare
              + ", largestLinearityShare="
              + largestLinearityShare
              + ", largestHysteresisShare="
              + largestHysteresisShare
              + ", smallestReferenceRatio="
              + smallestReferenceRatio);
    }
  }

  /** These rules for another class. */
  public CalibrationRules withAccuracyClass(AccuracyClass other) {
    return new CalibrationRules(
        other,
        weighting,
        smallestLevels,
        smallestSpanShare,
        largestLinearityShare,
        largestHysteresisShare,
        smallestReferenceRatio,
        temperature,
        certificateMonths,
        calibrationMonths);
  }

  /** These rules with another weighting. */
  public CalibrationRules withWeighting(Weighting other) {
    return new CalibrationRules(
        accuracyClass,
        other,
        smallestLevels,
        smallestSpanShare,
        largestLinearityShare,
        largestHysteresisShare,
        smallestReferenceRatio,
        temperature,
        certificateMonths,
        calibrationMonths);
  }

  /** These rules with another temperature allowance. */
  public CalibrationRules withTemperature(TemperatureAllowance other) {
    return new CalibrationRules(
        accuracyClass,
        weighting,
        smallestLevels,
        smallestSpanShare,
        largestLinearityShare,
        largestHysteresisShare,
        smallestReferenceRatio,
        other,
        certificateMonths,
        calibrationMonths);
  }
}
