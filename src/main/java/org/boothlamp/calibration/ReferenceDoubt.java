package org.boothlamp.calibration;

/**
 * Whether a reference reading can be what it is meant to be, by what the sensor shows at the same
 * time. A wrong unit, sign or meter range is questioned with both numbers; nothing is corrected.
 */
public final class ReferenceDoubt {

  private static final double THOUSAND = 1000;

  /** Below this share of full scale a sensor's zero error makes any ratio. */
  private static final double SMALL_SHARE = 0.02;

  private ReferenceDoubt() {}

  /**
   * Looks at one reading.
   *
   * @param reference what the meter is said to show, in amps or volts
   * @param nominal what the sensor shows by its nominal scale, likewise
   * @param fullScale of the sensor, likewise
   * @return the question, or null if there is none
   */
  public static String question(
      Channel channel, double reference, double nominal, double fullScale) {
    if (agree(reference, nominal, fullScale)) {
      return null;
    }
    return "the reference says "
        + amount(reference, channel)
        + ", the sensor "
        + amount(nominal, channel)
        + ": "
        + cause(channel, reference, nominal, fullScale);
  }

  /** Inside the gains a calibration may find, and a zero error of a little of full scale. */
  private static boolean agree(double reference, double nominal, double fullScale) {
    double small = SMALL_SHARE * fullScale;
    double least = Math.min(lower(nominal), upper(nominal)) - small;
    double most = Math.max(lower(nominal), upper(nominal)) + small;
    return reference >= least && reference <= most;
  }

  private static double lower(double nominal) {
    return CalibrationRules.SMALLEST_GAIN * nominal;
  }

  private static double upper(double nominal) {
    return CalibrationRules.LARGEST_GAIN * nominal;
  }

  private static String cause(Channel channel, double reference, double nominal, double fullScale) {
    String unit = channel.unit();
    if (agree(reference / THOUSAND, nominal, fullScale)) {
      return "about 1000 times as much; is it in m" + unit + "? The calibration takes " + unit;
    }
    if (agree(reference * THOUSAND, nominal, fullScale)
        && Math.abs(nominal) > SMALL_SHARE * fullScale) {
      return "about a thousandth; is it in k" + unit + "? The calibration takes " + unit;
    }
    if (agree(-reference, nominal, fullScale)) {
      return "the other sign; look at the direction of sensor and meter leads";
    }
    if (channel == Channel.CURRENT && Math.abs(reference) < Math.abs(nominal)) {
      return "much less; if the meter reads the voltage of a shunt, say how many amps a volt are";
    }
    return "too far apart for one sensor; look at unit, range and place of the meter";
  }

  private static String amount(double value, Channel channel) {
    return MeasuredValue.figure(value) + " " + channel.unit();
  }
}
