package org.boothlamp.report;

import org.boothlamp.procedure.Process;

/**
 * What a bead's length makes known of a run. Immutable.
 *
 * @param beadMillimetres length of the bead, above 0
 * @param travelMillimetresPerSecond length over arc-on time
 * @param arcEnergyKilojoulesPerMillimetre arc energy over length (ISO/TR 18491, from memory; ASME
 *     IX QW-409.1(c))
 * @param factor k, the process's thermal efficiency; NaN if the process is not known
 * @param heatInputKilojoulesPerMillimetre k times arc energy over length; NaN likewise
 */
public record HeatInput(
    double beadMillimetres,
    double travelMillimetresPerSecond,
    double arcEnergyKilojoulesPerMillimetre,
    double factor,
    double heatInputKilojoulesPerMillimetre) {

  private static final double JOULES_PER_KILOJOULE = 1_000;

  /**
   * @param process null if not known
   * @param energyJoules sum of v·i·Δt over the arc-on time
   * @param arcSeconds arc-on time, above 0
   * @param beadMillimetres above 0
   */
  public static HeatInput of(
      Process process, double energyJoules, double arcSeconds, double beadMillimetres) {
    if (!(beadMillimetres > 0) || !(arcSeconds > 0)) {
      throw new IllegalArgumentException(
          "bead length and arc time must be above 0: beadMillimetres="
              + beadMillimetres
              + ", arcSeconds="
              + arcSeconds);
    }
    double energy = energyJoules / JOULES_PER_KILOJOULE / beadMillimetres;
    double factor = factor(process);
    return new HeatInput(
        beadMillimetres, beadMillimetres / arcSeconds, energy, factor, factor * energy);
  }

  /** True for a process whose k is given from memory, because no source that gives it was read. */
  public static boolean isFromMemory(Process process) {
    return process == Process.SELF_SHIELDED_FLUX_CORED || process == Process.TIG_NO_FILLER;
  }

  /**
   * k by process: EN 1011-1 Table 1, as TWI's comparison of heat input and arc energy gives it; 114
   * and 142 from memory.
   *
   * @return NaN without a process
   */
  public static double factor(Process process) {
    if (process == null) {
      return Double.NaN;
    }
    return switch (process) {
      case SUBMERGED_ARC -> 1.0;
      case TIG, TIG_NO_FILLER, PLASMA -> 0.6;
      case MANUAL_METAL_ARC, SELF_SHIELDED_FLUX_CORED, MIG, MAG, FLUX_CORED, METAL_CORED -> 0.8;
    };
  }
}
