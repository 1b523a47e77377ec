package org.boothlamp.words;

/**
 * The units in which a screen shows what a length goes into. Amps, volts, watts and seconds are the
 * same in both. One inch is 25.4 mm exactly (NIST Special Publication 811, appendix B).
 */
public enum Units {
  /** Millimetres, mm/min, kJ/mm. */
  METRIC("metric", 1, "mm", "mm/min", "kJ/mm"),
  /** Inches, in/min, kJ/in. */
  INCH_POUND("inch-pound", 25.4, "in", "in/min", "kJ/in");

  private static final double SECONDS_A_MINUTE = 60;

  private final String key;
  private final double millimetres;
  private final String length;
  private final String speed;
  private final String heatInput;

  Units(String key, double millimetres, String length, String speed, String heatInput) {
    this.key = key;
    this.millimetres = millimetres;
    this.length = length;
    this.speed = speed;
    this.heatInput = heatInput;
  }

  /** Word in booth.toml. */
  public String key() {
    return key;
  }

  /** Unit symbol of a length. */
  public String lengthUnit() {
    return length;
  }

  /** Unit symbol of a travel speed or a wire feed. */
  public String speedUnit() {
    return speed;
  }

  /** Unit symbol of heat input and of arc energy per length. */
  public String heatInputUnit() {
    return heatInput;
  }

  /** A length in these units. */
  public double length(double millimetres) {
    return millimetres / this.millimetres;
  }

  /** The other way round, for a length that somebody entered. */
  public double millimetres(double length) {
    return length * millimetres;
  }

  /** A speed in these units, which are per minute. */
  public double speed(double millimetresPerSecond) {
    return millimetresPerSecond * SECONDS_A_MINUTE / millimetres;
  }

  /** Energy per length in these units. */
  public double heatInput(double kilojoulesPerMillimetre) {
    return kilojoulesPerMillimetre * millimetres;
  }
}
