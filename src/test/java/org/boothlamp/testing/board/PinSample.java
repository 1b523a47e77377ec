package org.boothlamp.testing.board;

import java.util.Locale;

/**
 * The lamp's pins at one moment, seen from outside the board: levels as the chip's level register
 * has them, and whether the chip drives the pin or has it as an input. Immutable.
 *
 * @param seconds since the board was switched on
 * @param levels bit {@code n} is the level of pin {@code n}
 * @param driven bit {@code n} is set while pin {@code n} is an output
 */
record PinSample(double seconds, int levels, int driven) {

  static final int RED = 17;
  static final int AMBER = 27;
  static final int GREEN = 22;
  static final int HEARTBEAT = 23;
  static final int LIGHTS = 1 << RED | 1 << AMBER | 1 << GREEN;

  /** Pins in one register that says what a pin is for, and the bits of each. */
  private static final int PINS_A_WORD = 10;

  private static final int BITS_A_PIN = 3;
  private static final int OUTPUT = 1;

  /**
   * From the chip's registers.
   *
   * @param functions the first three registers that say what pins are for, 10 pins each
   * @param levels the first level register
   */
  static PinSample of(double seconds, int[] functions, int levels) {
    int driven = 0;
    for (int pin = 0; pin < PINS_A_WORD * functions.length; pin++) {
      int function = functions[pin / PINS_A_WORD] >>> BITS_A_PIN * (pin % PINS_A_WORD) & 7;
      driven |= function == OUTPUT ? 1 << pin : 0;
    }
    return new PinSample(seconds, levels, driven);
  }

  boolean isHigh(int pin) {
    return (levels & 1 << pin) != 0;
  }

  boolean isDriven() {
    return (driven & LIGHTS) == LIGHTS;
  }

  /** Lights that are on, as {@code "red"}, {@code "amber green"} and so on; "dark" if none. */
  String lights() {
    String words =
        (isHigh(RED) ? "red " : "")
            + (isHigh(AMBER) ? "amber " : "")
            + (isHigh(GREEN) ? "green " : "");
    return words.isEmpty() ? "dark" : words.strip();
  }

  String toCsv() {
    return String.format(Locale.ROOT, "%.4f,%08x,%08x", seconds, levels, driven);
  }

  static PinSample ofCsv(String row) {
    String[] fields = row.split(",");
    return new PinSample(
        Double.parseDouble(fields[0]),
        Integer.parseUnsignedInt(fields[1], 16),
        Integer.parseUnsignedInt(fields[2], 16));
  }
}
