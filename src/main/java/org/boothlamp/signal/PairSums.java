package org.boothlamp.signal;

/**
 * Sums of sample pairs in counts, and the averages made of them.
 *
 * <p>All sums are whole numbers, so adding, and taking away again, loses no digit however long it
 * goes on: at 100,000 pairs a second of 16-bit counts a sum of squares fits for over 20 hours of
 * arc. Zero and gain come in only when an average is asked for. Nothing is created after
 * construction. Confined to one thread.
 *
 * <p>Averages of no pairs are NaN: no reading must never look like zero amps.
 */
public final class PairSums {

  long pairs;
  long current;
  long voltage;
  long currentSquared;
  long voltageSquared;
  long product;

  /** Pairs above the zero count less pairs below it, and their counts with the same signs. */
  long currentSigns;

  long currentSigned;
  long voltageSigns;
  long voltageSigned;

  int lowestCurrent;
  int highestCurrent;
  int lowestVoltage;
  int highestVoltage;

  long shortCircuits;

  /** Empty sums. */
  public PairSums() {
    clear();
  }

  /** Forgets everything. */
  public void clear() {
    pairs = 0;
    current = 0;
    voltage = 0;
    currentSquared = 0;
    voltageSquared = 0;
    product = 0;
    currentSigns = 0;
    currentSigned = 0;
    voltageSigns = 0;
    voltageSigned = 0;
    lowestCurrent = Integer.MAX_VALUE;
    highestCurrent = Integer.MIN_VALUE;
    lowestVoltage = Integer.MAX_VALUE;
    highestVoltage = Integer.MIN_VALUE;
    shortCircuits = 0;
  }

  /** Becomes a copy of {@code other}. */
  public void set(PairSums other) {
    pairs = other.pairs;
    current = other.current;
    voltage = other.voltage;
    currentSquared = other.currentSquared;
    voltageSquared = other.voltageSquared;
    product = other.product;
    currentSigns = other.currentSigns;
    currentSigned = other.currentSigned;
    voltageSigns = other.voltageSigns;
    voltageSigned = other.voltageSigned;
    lowestCurrent = other.lowestCurrent;
    highestCurrent = other.highestCurrent;
    lowestVoltage = other.lowestVoltage;
    highestVoltage = other.highestVoltage;
    shortCircuits = other.shortCircuits;
  }

  /** Adds all pairs of {@code other}. */
  public void add(PairSums other) {
    combine(other, 1);
    lowestCurrent = Math.min(lowestCurrent, other.lowestCurrent);
    highestCurrent = Math.max(highestCurrent, other.highestCurrent);
    lowestVoltage = Math.min(lowestVoltage, other.lowestVoltage);
    highestVoltage = Math.max(highestVoltage, other.highestVoltage);
  }

  /**
   * Takes pairs added before away again; the extremes stay as they were, too wide rather than
   * wrong.
   */
  public void subtract(PairSums other) {
    combine(other, -1);
  }

  private void combine(PairSums other, int sign) {
    pairs += sign * other.pairs;
    current += sign * other.current;
    voltage += sign * other.voltage;
    currentSquared += sign * other.currentSquared;
    voltageSquared += sign * other.voltageSquared;
    product += sign * other.product;
    currentSigns += sign * other.currentSigns;
    currentSigned += sign * other.currentSigned;
    voltageSigns += sign * other.voltageSigns;
    voltageSigned += sign * other.voltageSigned;
    shortCircuits += sign * other.shortCircuits;
  }

  /** Number of pairs summed. */
  public long pairs() {
    return pairs;
  }

  /** Short circuits that reached their least duration among these pairs. */
  public long shortCircuits() {
    return shortCircuits;
  }

  /** Mean current count; NaN without pairs. */
  public double meanCurrentCount() {
    return (double) current / pairs;
  }

  /** Mean voltage count; NaN without pairs. */
  public double meanVoltageCount() {
    return (double) voltage / pairs;
  }

  /** Lowest current count; larger than the highest if there are no pairs. */
  public int lowestCurrentCount() {
    return lowestCurrent;
  }

  /** Highest current count. */
  public int highestCurrentCount() {
    return highestCurrent;
  }

  /** Lowest voltage count; larger than the highest if there are no pairs. */
  public int lowestVoltageCount() {
    return lowestVoltage;
  }

  /** Highest voltage count. */
  public int highestVoltageCount() {
    return highestVoltage;
  }

  /** Mean current with its sign, amps. */
  public double meanAmps(PairScale scale) {
    return scale.current().toUnits(meanCurrentCount());
  }

  /** Mean voltage with its sign, volts. */
  public double meanVolts(PairScale scale) {
    return scale.voltage().toUnits(meanVoltageCount());
  }

  /** Mean of the absolute current, amps: what a DC meter behind a rectifier shows. */
  public double meanAbsoluteAmps(PairScale scale) {
    return meanAbsolute(scale.current(), currentSigned, currentSigns);
  }

  /** Mean of the absolute voltage, volts. */
  public double meanAbsoluteVolts(PairScale scale) {
    return meanAbsolute(scale.voltage(), voltageSigned, voltageSigns);
  }

  private double meanAbsolute(ChannelScale scale, long signedSum, long signs) {
    return Math.abs(scale.unitsPerCount()) * (signedSum - signs * scale.zeroCount()) / pairs;
  }

  /** Root of the mean square current, amps. */
  public double rmsAmps(PairScale scale) {
    return rms(scale.current(), current, currentSquared);
  }

  /** Root of the mean square voltage, volts. */
  public double rmsVolts(PairScale scale) {
    return rms(scale.voltage(), voltage, voltageSquared);
  }

  private double rms(ChannelScale scale, long sum, long sumOfSquares) {
    double zero = scale.zeroCount();
    double aboutZero = sumOfSquares - 2 * zero * sum + pairs * zero * zero;
    return Math.abs(scale.unitsPerCount()) * Math.sqrt(Math.max(aboutZero, 0) / pairs);
  }

  /** Sample standard deviation (n - 1) of the current, amps; NaN for fewer than two pairs. */
  public double standardDeviationAmps(PairScale scale) {
    return standardDeviation(scale.current(), current, currentSquared);
  }

  /** Sample standard deviation (n - 1) of the voltage, volts; NaN for fewer than two pairs. */
  public double standardDeviationVolts(PairScale scale) {
    return standardDeviation(scale.voltage(), voltage, voltageSquared);
  }

  /**
   * About the whole count nearest the mean, exactly, and from there to the mean: the textbook
   * one-pass formula in floating point loses all digits when the mean is large beside the spread.
   */
  private double standardDeviation(ChannelScale scale, long sum, long sumOfSquares) {
    if (pairs < 2) {
      return Double.NaN;
    }
    long middle = Math.round((double) sum / pairs);
    long aboutMiddle = sumOfSquares - 2 * middle * sum + pairs * middle * middle;
    double offset = (double) (sum - pairs * middle);
    double squares = aboutMiddle - offset * offset / pairs;
    return Math.abs(scale.unitsPerCount()) * Math.sqrt(squares / (pairs - 1));
  }

  /** Mean of the products v·i, watts: true power, never the product of the means. */
  public double meanWatts(PairScale scale) {
    double currentZero = scale.current().zeroCount();
    double voltageZero = scale.voltage().zeroCount();
    double aboutZero =
        product - voltageZero * current - currentZero * voltage + pairs * currentZero * voltageZero;
    return scale.current().unitsPerCount() * scale.voltage().unitsPerCount() * aboutZero / pairs;
  }
}
