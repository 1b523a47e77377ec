package org.boothlamp.calibration;

import java.time.LocalDate;
import org.boothlamp.judging.ExpandedUncertainty;
import org.boothlamp.signal.ChannelScale;

/**
 * What a sensor measures by at a moment: scale and U, and the calibration behind them. Immutable.
 *
 * <p>The latest accepted calibration that is not withdrawn counts, overdue or not; but only if it
 * was made for the nominal scale that the settings name now. One that was made for another scale
 * was made for other hardware, and so says that the hardware changed since: those before it do not
 * come back into force either.
 *
 * @param channel which sensor
 * @param state whether its calibration can be relied on
 * @param number of the calibration; 0 if there is none
 * @param scale counts to amps or volts
 * @param uncertainty U of a reading, with the factor of an overdue calibration
 * @param date day of the calibration; null if there is none
 * @param due day from which it is overdue; null if there is none
 * @param detail what a person should know: why it does not count, or by what U is widened; may be
 *     empty
 */
public record SensorInUse(
    Channel channel,
    State state,
    long number,
    ChannelScale scale,
    ExpandedUncertainty uncertainty,
    LocalDate date,
    LocalDate due,
    String detail) {

  /** Whether a calibration can be relied on. */
  public enum State {
    OK("ok"),
    OVERDUE("overdue"),
    MISSING("missing");

    private final String word;

    State(String word) {
      this.word = word;
    }

    /** As answers spell it. */
    public String word() {
      return word;
    }
  }

  /**
   * What holds without a calibration, and for how much longer an old one.
   *
   * @param nominal counts to amps or volts by the data sheet
   * @param stated U as the settings state it
   * @param overdueFactor by what U of an overdue calibration is multiplied, at least 1
   */
  public record Fallback(ChannelScale nominal, ExpandedUncertainty stated, double overdueFactor) {}

  /**
   * Picks the calibration of a channel.
   *
   * @param wallMillis time of day, ms since the epoch
   * @param today local day of the same moment
   */
  public static SensorInUse of(
      CalibrationHistory history,
      Channel channel,
      Fallback fallback,
      long wallMillis,
      LocalDate today) {
    CalibrationRecord record = history.inUse(channel, wallMillis);
    if (record == null) {
      return missing(channel, fallback, "");
    }
    if (!record.head().nominal().equals(fallback.nominal())) {
      return missing(channel, fallback, changed(record, fallback.nominal()));
    }
    return of(record, fallback.overdueFactor(), isOverdue(record, today));
  }

  /** True if an accepted calibration is overdue on a day. */
  public static boolean isOverdue(CalibrationRecord record, LocalDate day) {
    return !day.isBefore(record.finish().nextDue());
  }

  private static SensorInUse of(CalibrationRecord record, double factor, boolean overdue) {
    CalibrationFinish finish = record.finish();
    ExpandedUncertainty u = finish.uncertainty();
    return new SensorInUse(
        record.channel(),
        overdue ? State.OVERDUE : State.OK,
        record.number(),
        finish.scale(),
        overdue ? new ExpandedUncertainty(factor * u.constant(), factor * u.proportional()) : u,
        record.head().date(),
        finish.nextDue(),
        overdue ? "U is taken " + MeasuredValue.figure(factor) + " times as wide" : "");
  }

  private static SensorInUse missing(Channel channel, Fallback fallback, String why) {
    return new SensorInUse(
        channel, State.MISSING, 0, fallback.nominal(), fallback.stated(), null, null, why);
  }

  private static String changed(CalibrationRecord record, ChannelScale nominal) {
    return "calibration "
        + record.number()
        + " was made for the nominal scale "
        + words(record.head().nominal(), record.channel())
        + ", the settings now say "
        + words(nominal, record.channel())
        + "; calibrate again, or put the scale back if the sensor did not change";
  }

  private static String words(ChannelScale scale, Channel channel) {
    return scale.unitsPerCount()
        + " "
        + channel.unit()
        + " a count with zero at "
        + MeasuredValue.value(scale.zeroCount(), Double.NaN);
  }

  /** True if a calibration scales the sensor, overdue or not. */
  public boolean isCalibrated() {
    return state != State.MISSING;
  }

  /**
   * "current: calibration 3 of 2026-03-02, overdue since 2027-03-02, U is taken 2 times as wide".
   */
  public String words() {
    StringBuilder words = new StringBuilder(channel.word()).append(": ");
    switch (state) {
      case OK -> words.append(name()).append(", due ").append(due);
      case OVERDUE -> words.append(name()).append(", overdue since ").append(due);
      case MISSING -> words.append("no calibration, the nominal scale and the stated U hold");
    }
    return detail.isEmpty() ? words.toString() : words.append(", ").append(detail).toString();
  }

  private String name() {
    return "calibration " + number + " of " + date;
  }
}
