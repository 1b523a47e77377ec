package org.boothlamp.judging;

import org.boothlamp.procedure.Quantity;
import org.boothlamp.signal.PairScale;
import org.boothlamp.signal.PairSums;
import org.boothlamp.signal.Polarity;
import org.boothlamp.signal.ShortCircuitRule;

/**
 * Turns the sums of an average into the quantities that a procedure limits. Amps and volts are
 * means of the absolute value for direct current and RMS for alternating current. Confined to one
 * thread.
 */
public final class Averages {

  private final PairScale scale;
  private final int pairsPerSecond;
  private PairSums sums = new PairSums();
  private boolean alternating;

  /** Averages for pairs of one scale and rate. */
  public Averages(PairScale scale, int pairsPerSecond) {
    this.scale = scale;
    this.pairsPerSecond = pairsPerSecond;
  }

  /** Looks at these sums from now on; {@code asked} is the procedure's kind of current. */
  public void look(PairSums sums, Polarity asked) {
    this.sums = sums;
    alternating = asked == Polarity.AC;
  }

  /** True if this source can measure the quantity: short circuits need a fast one. */
  public boolean isMeasured(Quantity quantity) {
    return quantity.isLive()
        && (quantity != Quantity.SHORTS_PER_S || ShortCircuitRule.isMeasurableAt(pairsPerSecond));
  }

  /** The value of a quantity that is measured; NaN if there are no pairs. */
  public double of(Quantity quantity) {
    return switch (quantity) {
      case AMPS -> alternating ? sums.rmsAmps(scale) : sums.meanAbsoluteAmps(scale);
      case VOLTS -> alternating ? sums.rmsVolts(scale) : sums.meanAbsoluteVolts(scale);
      case POWER_W -> sums.meanWatts(scale);
      case SHORTS_PER_S -> (double) sums.shortCircuits() * pairsPerSecond / sums.pairs();
      case HEAT_INPUT_KJ_PER_MM, ARC_S -> Double.NaN;
    };
  }
}
