package org.boothlamp.signal;

/**
 * The loops over pairs: everything the monitor knows goes through them, so they work on whole
 * counts, keep what they sum in local variables and create nothing. One loop takes the sums and
 * extremes, few enough for the registers; they tell whether the loops for signs and short circuits
 * are needed at all. Remembers only the running short circuit and the one before it from one call
 * to the next. Confined to one thread.
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

  /** The short circuits that ended since it was last cleared. */
  final ShortCycles cycles = new ShortCycles();

  /** Sums of the pairs of one call; kept because nothing may be created per call. */
  private final PairSums part = new PairSums();

  private final int longestCyclePairs;

  /** Pairs in a row at short-circuit volts, their absolute counts, and the highest of them. */
  private int shortRun;

  private long shortCounts;
  private int shortPeak;

  /** Pairs seen since the last gap, and where the last short that counted began and ended. */
  private long position;

  private long lastShortStart = -1;
  private long lastShortEnd;

  PairLoop(int pairsPerSecond, PairScale scale, ShortCircuitRule rule) {
    leastShortPairs =
        ShortCircuitRule.isMeasurableAt(pairsPerSecond)
            ? Math.max(1, (int) Math.round(ShortCircuitRule.LEAST_SECONDS * pairsPerSecond))
            : Integer.MAX_VALUE;
    longestCyclePairs = (int) (ShortCycles.LONGEST_CYCLE_SECONDS * pairsPerSecond);
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
    shortCounts = 0;
    shortPeak = 0;
    lastShortStart = -1;
  }

  /** True if this current count carries current. */
  boolean isFlowing(int count) {
    return count <= flowingBelow || count >= flowingAbove;
  }

  /**
   * Adds pairs of a slot that {@link #add} has seen already; short circuits are not counted again.
   */
  void addPart(short[] currentCounts, short[] voltageCounts, int from, int until, PairSums sums) {
    sumUp(currentCounts, voltageCounts, from, until);
    sums.add(part);
  }

  /** Adds pairs to sums; short circuits are counted when the arc burns again after them. */
  void add(short[] currentCounts, short[] voltageCounts, int from, int until, PairSums sums) {
    sumUp(currentCounts, voltageCounts, from, until);
    if (shortRun > 0 || mayHoldShort(part)) {
      part.shortCircuits = countShorts(currentCounts, voltageCounts, from, until);
    }
    position += until - from;
    sums.add(part);
  }

  private void sumUp(short[] currentCounts, short[] voltageCounts, int from, int until) {
    part.clear();
    sum(currentCounts, voltageCounts, from, until, part);
    rectify(currentCounts, voltageCounts, from, until, part);
  }

  private static void sum(
      short[] currentCounts, short[] voltageCounts, int from, int until, PairSums part) {
    long current = 0;
    long voltage = 0;
    long currentSquared = 0;
    long voltageSquared = 0;
    long product = 0;
    int lowestCurrent = Integer.MAX_VALUE;
    int highestCurrent = Integer.MIN_VALUE;
    int lowestVoltage = Integer.MAX_VALUE;
    int highestVoltage = Integer.MIN_VALUE;
    for (int k = from; k < until; k++) {
      int i = currentCounts[k];
      int v = voltageCounts[k];
      current += i;
      voltage += v;
      currentSquared += i * i;
      voltageSquared += v * v;
      product += i * v;
      lowestCurrent = Math.min(lowestCurrent, i);
      highestCurrent = Math.max(highestCurrent, i);
      lowestVoltage = Math.min(lowestVoltage, v);
      highestVoltage = Math.max(highestVoltage, v);
    }
    part.pairs = until - from;
    part.current = current;
    part.voltage = voltage;
    part.currentSquared = currentSquared;
    part.voltageSquared = voltageSquared;
    part.product = product;
    part.lowestCurrent = lowestCurrent;
    part.highestCurrent = highestCurrent;
    part.lowestVoltage = lowestVoltage;
    part.highestVoltage = highestVoltage;
  }

  /** Signs and signed sums; on direct current all pairs lie on one side and no loop is needed. */
  private void rectify(
      short[] currentCounts, short[] voltageCounts, int from, int until, PairSums part) {
    int side = side(part.lowestCurrent, part.highestCurrent, currentZero);
    part.currentSigns = side * part.pairs;
    part.currentSigned = side * part.current;
    if (side == 0) {
      part.currentSigns = part.pairs - 2 * countBelow(currentZero, currentCounts, from, until);
      part.currentSigned = part.current - 2 * sumBelow(currentZero, currentCounts, from, until);
    }
    side = side(part.lowestVoltage, part.highestVoltage, voltageZero);
    part.voltageSigns = side * part.pairs;
    part.voltageSigned = side * part.voltage;
    if (side == 0) {
      part.voltageSigns = part.pairs - 2 * countBelow(voltageZero, voltageCounts, from, until);
      part.voltageSigned = part.voltage - 2 * sumBelow(voltageZero, voltageCounts, from, until);
    }
  }

  /** 1 if all counts are at or above zero, -1 if all are below, 0 if they are on both sides. */
  private static int side(int lowest, int highest, int zero) {
    return lowest >= zero ? 1 : highest < zero ? -1 : 0;
  }

  /** The top bit of the difference is the answer: on an alternating arc a branch would guess. */
  private static long countBelow(int zero, short[] counts, int from, int until) {
    int below = 0;
    for (int k = from; k < until; k++) {
      below += (counts[k] - zero) >>> 31;
    }
    return below;
  }

  private static long sumBelow(int zero, short[] counts, int from, int until) {
    long sum = 0;
    for (int k = from; k < until; k++) {
      int mask = (counts[k] - zero) >> 31;
      sum += counts[k] & mask;
    }
    return sum;
  }

  /** False if no pair can be shorted: none carries current, or all are beyond the threshold. */
  private boolean mayHoldShort(PairSums part) {
    boolean flowing = part.lowestCurrent <= flowingBelow || part.highestCurrent >= flowingAbove;
    boolean low =
        part.lowestVoltage < Math.max(shortBelowWhenNegative, shortBelowWhenPositive)
            && part.highestVoltage > Math.min(shortAboveWhenNegative, shortAboveWhenPositive);
    return flowing && low;
  }

  private int countShorts(short[] currentCounts, short[] voltageCounts, int from, int until) {
    int shorts = 0;
    int run = shortRun;
    long counts = shortCounts;
    int peak = shortPeak;
    for (int k = from; k < until; k++) {
      if (isShorted(currentCounts[k], voltageCounts[k])) {
        int count = Math.abs(currentCounts[k] - currentZero);
        run++;
        counts += count;
        peak = Math.max(peak, count);
      } else if (run > 0) {
        if (run >= leastShortPairs && isFlowing(currentCounts[k])) {
          shorts++;
          cycles.addShort(run, counts, peak);
          closeCycle(position + k - from, run);
        }
        run = 0;
        counts = 0;
        peak = 0;
      }
    }
    shortRun = run;
    shortCounts = counts;
    shortPeak = peak;
    return shorts;
  }

  /** A short of {@code run} pairs that counts was over at {@code end}. */
  private void closeCycle(long end, int run) {
    long start = end - run;
    if (lastShortStart >= 0 && start - lastShortStart <= longestCyclePairs) {
      cycles.addCycle(start - lastShortStart, start - lastShortEnd);
    }
    lastShortStart = start;
    lastShortEnd = end;
  }

  private boolean isShorted(int current, int voltage) {
    boolean low =
        current < currentZero
            ? voltage > shortAboveWhenNegative & voltage < shortBelowWhenNegative
            : voltage > shortAboveWhenPositive & voltage < shortBelowWhenPositive;
    return low && isFlowing(current);
  }
}
