package org.boothlamp.technique;

/**
 * Volts for each millimetre of arc, from two arcs of measured length on the school's own rod, gas
 * and current. Volts alone say nothing of millimetres: falls and gradients differ from rod to rod.
 * Immutable.
 *
 * @param voltsPerMm above 0
 * @param uncertainty standard uncertainty of {@code voltsPerMm}
 */
public record ArcLengthScale(double voltsPerMm, double uncertainty) {

  public ArcLengthScale {
    if (!(voltsPerMm > 0)) {
      throw new IllegalArgumentException(
          "a longer arc must take more volts: "
              + voltsPerMm
              + " V/mm; check that lengths and volts belong together");
    }
  }

  /**
   * The scale from two arcs at the same setting.
   *
   * @param shortMm length of the shorter arc
   * @param shortVolts its mean volts
   * @param longMm length of the longer arc, above {@code shortMm}
   * @param longVolts its mean volts
   * @param mmUncertainty standard uncertainty of either length
   * @param voltsUncertainty standard uncertainty of either mean, without what both share
   * @throws IllegalArgumentException if the lengths do not rise, or the volts do not rise with them
   */
  public static ArcLengthScale of(
      double shortMm,
      double shortVolts,
      double longMm,
      double longVolts,
      double mmUncertainty,
      double voltsUncertainty) {
    double mm = longMm - shortMm;
    if (!(mm > 0)) {
      throw new IllegalArgumentException(
          "the second arc must be longer than the first: " + shortMm + " mm, " + longMm + " mm");
    }
    double slope = (longVolts - shortVolts) / mm;
    double both = Math.sqrt(2);
    return new ArcLengthScale(
        slope, Math.hypot(both * voltsUncertainty, slope * both * mmUncertainty) / mm);
  }

  /** Change of the arc's length for a change of volts, mm. */
  public Estimate changeMm(double deltaVolts, double deltaVoltsUncertainty) {
    double mm = deltaVolts / voltsPerMm;
    return new Estimate(mm, Math.hypot(deltaVoltsUncertainty, mm * uncertainty) / voltsPerMm);
  }
}
