package org.boothlamp.health;

import java.math.BigDecimal;
import java.math.MathContext;
import org.boothlamp.signal.Slot;

/** From where on each fault is one, in words for a person; made of the rules' own numbers. */
public final class HealthLimits {

  private static final MathContext THREE_DIGITS = new MathContext(3);

  private HealthLimits() {}

  /**
   * The limit of a fault, such as {@code no move of a count for 0.4 s of current}.
   *
   * @throws IllegalArgumentException for a fault that takes a clock: this package does not judge it
   */
  public static String of(HealthFault fault) {
    return switch (fault) {
      case CLIPPED ->
          percent(ClippedRule.SHARE)
              + " of the samples of "
              + seconds(ClippedRule.WINDOW_SLOTS)
              + " at the converter's lowest or highest count";
      case FROZEN_CURRENT, FROZEN_VOLTAGE ->
          "no move of a count in " + seconds(FrozenRule.CONFIRM_SLOTS) + " of current";
      case AMPS_WITHOUT_VOLTS ->
          "less than "
              + number(LostVoltageRule.LEAST_VOLTS)
              + " V for "
              + seconds(LostVoltageRule.CONFIRM_SLOTS)
              + " of current";
      case VOLTS_WITHOUT_AMPS ->
          "an arc's volts for "
              + seconds(LostCurrentRule.VANISHED_SLOTS)
              + " and less than "
              + number(LostCurrentRule.MOST_AMPS)
              + " A";
      case WRONG_POLARITY -> "against the procedure for " + seconds(PolarityRule.CONFIRM_SLOTS);
      case SENSORS_DISAGREE -> "power that flows back for " + seconds(PolarityRule.CONFIRM_SLOTS);
      case ZERO_DRIFT -> number(ZeroRule.BAND_AMPS) + " A while no current flows";
      case NOISE ->
          "standard deviation of "
              + number(NoiseRule.MOST_AMPS)
              + " A or "
              + number(NoiseRule.MOST_VOLTS)
              + " V while no current flows";
      case GAPS ->
          percent(GapRule.SHARE)
              + " of the samples of "
              + seconds(GapRule.WINDOW_SLOTS)
              + " missing";
      case SAMPLE_RATE, CLOCK_DRIFT ->
          throw new IllegalArgumentException(
              "takes a clock, so it has no limit here: " + fault.word());
    };
  }

  private static String seconds(int slots) {
    return number(slots * Slot.SECONDS) + " s";
  }

  private static String percent(double share) {
    return number(100 * share) + " %";
  }

  private static String number(double value) {
    return new BigDecimal(value, THREE_DIGITS).stripTrailingZeros().toPlainString();
  }
}
