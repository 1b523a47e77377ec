package org.boothlamp.procedure;

/** Arc welding processes by their ISO 4063 number. */
public enum Process {
  /** Covered electrode, "stick". */
  MANUAL_METAL_ARC("111", "stick"),
  /** Self-shielded tubular wire. */
  SELF_SHIELDED_FLUX_CORED("114", "self-shielded flux-cored"),
  /** Submerged arc with solid wire. */
  SUBMERGED_ARC("121", "submerged arc"),
  /** Solid wire, inert gas. */
  MIG("131", "MIG"),
  /** Solid wire, active gas. */
  MAG("135", "MAG"),
  /** Flux-cored wire, active gas. */
  FLUX_CORED("136", "flux-cored"),
  /** Metal-cored wire, active gas. */
  METAL_CORED("138", "metal-cored"),
  /** Tungsten electrode, inert gas, solid filler. */
  TIG("141", "TIG"),
  /** Tungsten electrode, inert gas, no filler. */
  TIG_NO_FILLER("142", "TIG without filler"),
  /** Plasma arc. */
  PLASMA("15", "plasma");

  private final String number;
  private final String word;

  Process(String number, String word) {
    this.number = number;
    this.word = word;
  }

  /** ISO 4063 number. */
  public String number() {
    return number;
  }

  /** What the shop floor calls it. */
  public String word() {
    return word;
  }

  /**
   * True where a non-consumable electrode burns at low current, so that arc-on may be set lower.
   */
  public boolean isTig() {
    return this == TIG || this == TIG_NO_FILLER;
  }

  /** The process with this ISO 4063 number, or null if it is not in the table. */
  public static Process ofNumber(String number) {
    for (Process process : values()) {
      if (process.number.equals(number)) {
        return process;
      }
    }
    return null;
  }
}
