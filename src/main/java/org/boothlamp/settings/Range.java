package org.boothlamp.settings;

/**
 * Values a number in a file may have, both ends included.
 *
 * @param low lowest
 * @param high highest
 * @param unit unit symbol, empty for a bare number
 */
record Range(double low, double high, String unit) {

  boolean holds(double value) {
    return value >= low && value <= high;
  }

  /** For example {@code from 5 to 100 A}. */
  String words() {
    String span = "from " + Literal.ofNumber(low) + " to " + Literal.ofNumber(high);
    return unit.isEmpty() ? span : span + " " + unit;
  }
}
