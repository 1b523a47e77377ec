package org.boothlamp.report;

import java.util.Arrays;
import org.boothlamp.signal.PairScale;
import org.boothlamp.signal.Polarity;

/**
 * A window of a raw recording, reduced to columns of lowest and highest values; single pairs where
 * they all have a column of their own. What is short stays visible in it however wide the window.
 * Amps and volts are those of the run's direction: positive for either direct current, both ways at
 * AC. NaN where no pair arrived. The arrays are its own: do not change them.
 */
public final class RawColumns {

  /** Window the columns are of. */
  public final RawWindow window;

  /** Lowest current, A. */
  public final double[] lowestAmps;

  /** Highest current, A. */
  public final double[] highestAmps;

  /** Lowest voltage, V. */
  public final double[] lowestVolts;

  /** Highest voltage, V. */
  public final double[] highestVolts;

  private RawColumns(RawWindow window, int columns) {
    this.window = window;
    lowestAmps = unknown(columns);
    highestAmps = unknown(columns);
    lowestVolts = unknown(columns);
    highestVolts = unknown(columns);
  }

  private static double[] unknown(int columns) {
    double[] values = new double[columns];
    Arrays.fill(values, Double.NaN);
    return values;
  }

  /**
   * Reads a window once.
   *
   * @param polarity of the run
   * @param mostColumns at least 1
   */
  public static RawColumns of(RawWindow window, Polarity polarity, int mostColumns) {
    int columns = (int) Math.min(window.pairs(), mostColumns);
    RawColumns reduced = new RawColumns(window, columns);
    window.read(reduced.new Reducer(polarity == Polarity.DC_MINUS ? -1 : 1));
    return reduced;
  }

  /** Number of columns. */
  public int size() {
    return lowestAmps.length;
  }

  /** Length of one column; the pairs of two may differ by one. */
  public double columnSeconds() {
    return (double) window.pairs() / window.recording().pairsPerSecond() / size();
  }

  /** True if each column is one pair. */
  public boolean areSinglePairs() {
    return size() == window.pairs();
  }

  /** Math.min and Math.max would keep the NaN that a column begins with. */
  private final class Reducer implements RawPairSink {

    private final PairScale scale = window.recording().scale();
    private final int sign;
    private long pair;

    Reducer(int sign) {
      this.sign = sign;
    }

    @Override
    public void take(short current, short voltage) {
      int column = (int) (pair++ * size() / window.pairs());
      double amps = sign * scale.current().toUnits(current);
      double volts = sign * scale.voltage().toUnits(voltage);
      lowestAmps[column] = amps > lowestAmps[column] ? lowestAmps[column] : amps;
      highestAmps[column] = amps < highestAmps[column] ? highestAmps[column] : amps;
      lowestVolts[column] = volts > lowestVolts[column] ? lowestVolts[column] : volts;
      highestVolts[column] = volts < highestVolts[column] ? highestVolts[column] : volts;
    }

    @Override
    public void miss() {
      pair++;
    }
  }
}
