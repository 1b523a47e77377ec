package org.boothlamp.signal;

/**
 * The loop over pairs: everything the monitor knows goes through it, so it works on whole counts,
 * keeps what it sums in local variables and creates nothing. Remembers only the running short
 * circuit from one call to the next. Confined to one thread.
 */
final class PairLoop {

  private final int leastShortPairs;

  /**
   * Least current and voltage count at or above zero: sign of a pair without arithmetic in units.
   */
  private final int currentZero;

  private final int voltageZero;

  /**
   * Voltage counts strictly between these are short-circuited while the current count is below zero
   * …
   */
  private final int shortAboveWhenNegative;

  private final int shortBelowWhenNegative;

  /** … and while it is at or above zero. */
  private final int shortAboveWhenPositive;

  private final int shortBelowWhenPositive;

  /** Current counts at or beyond these carry current. */
  private final int flowingBelow;

  private final int flowingAbove;

  /** Pairs in a row at short-circuit volts. */
  private int shortRun;

  PairLoop(int pairsPerSecond, PairScale scale, ShortCircuitRule rule) {
    leastShortPairs =
        ShortCircuitRule.isMeasurableAt(pairsPerSecond)
            ? Math.max(1, (int) Math.round(ShortCircuitRule.LEAST_SECONDS * pairsPerSecond))
            : Integer.MAX_VALUE;
    currentZero = (int) Math.ceil(scale.current().zeroCount());
    voltageZero = (int) Math.ceil(scale.voltage().zeroCount());
    double flowing = rule.flowingAmps() / Math.abs(scale.current().unitsPerCount());
    flowingBelow = (int) Math.floor(scale.current().zeroCount() - flowing);
    flowingAbove = (int) Math.ceil(scale.current().zeroCount() + flowing);

    double with = rule.volts() / Math.abs(scale.voltage().unitsPerCount());
    double against = ShortCircuitRule.NOISE_SHARE * with;
    boolean sameDirection =
        scale.current().unitsPerCount() > 0 == scale.voltage().unitsPerCount() > 0;
    double zero = scale.voltage().zeroCount();
    shortAboveWhenPositive = (int) Math.floor(zero - (sameDirection ? against : with));
    shortBelowWhenPositive = (int) Math.ceil(zero + (sameDirection ? with : against));
    shortAboveWhenNegative = (int) Math.floor(zero - (sameDirection ? with : against));
    shortBelowWhenNegative = (int) Math.ceil(zero + (sameDirection ? against : with));
  }

  /** Time is missing here: a short circuit does not reach across it. */
  void breakShort() {
    shortRun = 0;
  }

  /** True if this current count carries current. */
  boolean isFlowing(int count) {
    return count <= flowingBelow || count >= flowingAbove;
  }

  /**
   * Adds pairs of a slot that {@link #add} has seen already; short circuits are not counted again.
   */
  void addPart(short[] currentCounts, short[] voltageCounts, int from, int until, PairSums sums) {
    int run = shortRun;
    shortRun = 0;
    add(currentCounts, voltageCounts, from, until, sums);
    sums.shortCircuits = 0;
    shortRun = run;
  }

  /** Adds pairs to sums; short circuits are counted when the arc burns again after them. */
  void add(short[] currentCounts, short[] voltageCounts, int from, int until, PairSums sums) {
    long current = 0;
    long voltage = 0;
    long currentSquared = 0;
    long voltageSquared = 0;
    long product = 0;
    int currentSigns = 0;
    long currentSigned = 0;
    int voltageSigns = 0;
    long voltageSigned = 0;
    int lowestCurrent = sums.lowestCurrent;
    int highestCurrent = sums.highestCurrent;
    int lowestVoltage = sums.lowestVoltage;
    int highestVoltage = sums.highestVoltage;
    int shorts = 0;
    int run = shortRun;
    for (int k = from; k < until; k++) {
      int i = currentCounts[k];
      int v = voltageCounts[k];
      current += i;
      voltage += v;
      currentSquared += i * i;
      voltageSquared += v * v;
      product += i * v;
      boolean negative = i < currentZero;
      int currentSign = negative ? -1 : 1;
      int voltageSign = v < voltageZero ? -1 : 1;
      currentSigns += currentSign;
      currentSigned += currentSign * i;
      voltageSigns += voltageSign;
      voltageSigned += voltageSign * v;
      lowestCurrent = Math.min(lowestCurrent, i);
      highestCurrent = Math.max(highestCurrent, i);
      lowestVoltage = Math.min(lowestVoltage, v);
      highestVoltage = Math.max(highestVoltage, v);
      boolean low =
          v > (negative ? shortAboveWhenNegative : shortAboveWhenPositive)
              & v < (negative ? shortBelowWhenNegative : shortBelowWhenPositive);
      boolean flowing = i <= flowingBelow | i >= flowingAbove;
      shorts += !low & flowing & run >= leastShortPairs ? 1 : 0;
      run = low & flowing ? run + 1 : 0;
    }
    sums.pairs += until - from;
    sums.current += current;
    sums.voltage += voltage;
    sums.currentSquared += currentSquared;
    sums.voltageSquared += voltageSquared;
    sums.product += product;
    sums.currentSigns += currentSigns;
    sums.currentSigned += currentSigned;
    sums.voltageSigns += voltageSigns;
    sums.voltageSigned += voltageSigned;
    sums.lowestCurrent = lowestCurrent;
    sums.highestCurrent = highestCurrent;
    sums.lowestVoltage = lowestVoltage;
    sums.highestVoltage = highestVoltage;
    sums.shortCircuits += shorts;
    shortRun = run;
  }
}
