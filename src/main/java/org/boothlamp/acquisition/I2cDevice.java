package org.boothlamp.acquisition;

import java.util.Arrays;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.IntStream;

/**
 * Converters of four inputs on I2C, and their registers: Texas Instruments SBAS444D (ADS1115) and
 * SBAS473E (ADS1015), section "Register map".
 */
public enum I2cDevice {
  /** 16 bits, up to 860 conversions a second. */
  ADS1115("ads1115", 16, 8, 16, 32, 64, 128, 250, 475, 860),
  /** 12 bits at the upper end of the register, up to 3300 conversions a second. */
  ADS1015("ads1015", 12, 128, 250, 490, 920, 1_600, 2_400, 3_300);

  /** Inputs of either. */
  public static final int CHANNELS = 4;

  static final int CONVERSION_REGISTER = 0;
  static final int CONFIG_REGISTER = 1;

  /** Written: start a conversion. Read: 0 while it runs. */
  static final int START_OR_IDLE = 1 << 15;

  private static final int SINGLE_ENDED = 0b100 << 12;
  private static final int CHANNEL_SHIFT = 12;
  private static final int GAIN_SHIFT = 9;
  private static final int SINGLE_SHOT = 1 << 8;
  private static final int RATE_SHIFT = 5;
  private static final int COMPARATOR_OFF = 0b11;
  private static final int REGISTER_BITS = 16;

  /** Full scale by gain code 0 to 5, V; the order of the codes is from memory. */
  private static final double[] FULL_SCALES_VOLTS = {6.144, 4.096, 2.048, 1.024, 0.512, 0.256};

  private final String word;
  private final int bits;
  private final int[] rates;

  I2cDevice(String word, int bits, int... rates) {
    this.word = word;
    this.bits = bits;
    this.rates = rates;
  }

  /** The word in settings. */
  public String word() {
    return word;
  }

  /** Conversions a second that it can be set to, rising. */
  public List<Integer> rates() {
    return Arrays.stream(rates).boxed().collect(Collectors.toUnmodifiableList());
  }

  /** Full scales that it can be set to, V, falling. */
  public static List<Double> fullScalesVolts() {
    return Arrays.stream(FULL_SCALES_VOLTS).boxed().collect(Collectors.toUnmodifiableList());
  }

  /** Highest count; the lowest is its negative less one. */
  public int highestCount() {
    return (1 << bits - 1) - 1;
  }

  /** Volts of one count at a full scale. */
  public double voltsPerCount(double fullScaleVolts) {
    return fullScaleVolts / (1 << bits - 1);
  }

  /**
   * The word that starts one conversion of an input against ground.
   *
   * @throws IllegalArgumentException for a full scale or a rate that it does not have
   */
  int config(int channel, double fullScaleVolts, int rate) {
    return START_OR_IDLE
        | SINGLE_ENDED
        | channel << CHANNEL_SHIFT
        | gainCode(fullScaleVolts) << GAIN_SHIFT
        | SINGLE_SHOT
        | rateCode(rate) << RATE_SHIFT
        | COMPARATOR_OFF;
  }

  private int gainCode(double fullScaleVolts) {
    return IntStream.range(0, FULL_SCALES_VOLTS.length)
        .filter(code -> FULL_SCALES_VOLTS[code] == fullScaleVolts)
        .findFirst()
        .orElseThrow(() -> new IllegalArgumentException("no full scale of " + fullScaleVolts));
  }

  private int rateCode(int rate) {
    int code = Arrays.binarySearch(rates, rate);
    if (code < 0) {
      throw new IllegalArgumentException(word + " has no rate of " + rate);
    }
    return code;
  }

  /** The count in the conversion register: two's complement, at the upper end. */
  short count(int register) {
    return (short) ((short) register >> REGISTER_BITS - bits);
  }
}
