package org.boothlamp.procedure;

/** What a procedure can limit, with the word and the unit used in files and reports. */
public enum Quantity {
  /** Average current. */
  AMPS("amps", "A", true),
  /** Average voltage. */
  VOLTS("volts", "V", true),
  /** Average of the products v·i. */
  POWER_W("power_w", "W", true),
  /** Short circuits a second over the average. */
  SHORTS_PER_S("shorts_per_s", "1/s", true),
  /** k times arc energy per length; known only when the bead length is entered after the weld. */
  HEAT_INPUT_KJ_PER_MM("heat_input_kj_per_mm", "kJ/mm", false),
  /** Length of one run. */
  ARC_S("arc_s", "s", false);

  private final String key;
  private final String unit;
  private final boolean live;

  Quantity(String key, String unit, boolean live) {
    this.key = key;
    this.unit = unit;
    this.live = live;
  }

  /** Key in a procedure file and word in reports. */
  public String key() {
    return key;
  }

  /** Unit symbol. */
  public String unit() {
    return unit;
  }

  /** True if the average is known while the arc burns, so that the lamp can show it. */
  public boolean isLive() {
    return live;
  }
}
