package org.boothlamp.technique;

import org.boothlamp.procedure.Characteristic;

/**
 * The slope of the welding source's curve where the run works, from the run itself: amps per volt
 * on constant current, volts per amp on constant voltage. What the run does not show is filled up
 * with what sources are like. Immutable.
 *
 * @param slope A/V or V/A, usually below 0
 * @param uncertainty standard uncertainty, in the same unit
 */
record SourceCurve(double slope, double uncertainty) {

  /**
   * A covered-electrode source of 80 V open circuit loses 8 A by 5 V, one of 50 V 23 A
   * (distributor's glossary after a welding handbook); a TIG source nothing.
   */
  private static final SourceCurve CONSTANT_CURRENT = new SourceCurve(-1.8, 1.5);

  /** 1 to 5 V by 100 A; common practice, no source. */
  private static final SourceCurve CONSTANT_VOLTAGE = new SourceCurve(-0.03, 0.012);

  /** Blocks that are looked at, at most: their pairs make the cost. */
  private static final int MOST_BLOCKS = 120;

  private static final int LEAST_BLOCK_POINTS = 5;

  /** The points in use make the line: without the spell, as a cause must not prove itself. */
  static SourceCurve of(RunProfile profile, boolean[] use, Characteristic source) {
    SourceCurve usual =
        source == Characteristic.CONSTANT_CURRENT ? CONSTANT_CURRENT : CONSTANT_VOLTAGE;
    if (source == Characteristic.CONSTANT_VOLTAGE) {
      // metal transfer moves volts and amps of a wire arc far more than the source's curve does
      return usual;
    }
    int points = Math.max(LEAST_BLOCK_POINTS, profile.size() / MOST_BLOCKS);
    Blocks blocks = Blocks.of(profile, use, points);
    RobustLine line = RobustLine.through(blocks.volts(), blocks.amps());
    return usual.improvedBy(line);
  }

  /** Both weighed by their certainty. */
  private SourceCurve improvedBy(RobustLine line) {
    if (Double.isNaN(line.slope()) || Double.isInfinite(line.slopeUncertainty())) {
      return this;
    }
    double known = 1 / (uncertainty * uncertainty);
    double least = Math.max(line.slopeUncertainty(), 1e-3);
    double seen = 1 / (least * least);
    return new SourceCurve(
        (known * slope + seen * line.slope()) / (known + seen), Math.sqrt(1 / (known + seen)));
  }
}
