package org.boothlamp.signal;

/**
 * Cuts a stream of sample pairs into slots and sums them.
 *
 * <p>Slot {@code k} holds the pairs whose index is at or after {@code k * rate / 100}, so any whole
 * rate divides without drift. A jump of the index is missing time: the slot it falls into is short,
 * slots without any pair are delivered as missing. Fixed work and no objects per pair. Confined to
 * one thread.
 */
public final class SlotBuilder {

  private final int pairsPerSecond;
  private final SlotListener listener;
  private final Slot slot = new Slot();

  /**
   * Least current and voltage count at or above zero: sign of a pair without arithmetic in units.
   */
  private final int currentZero;

  private final int voltageZero;

  /** Counts strictly between these are below the short-circuit voltage. */
  private final int shortAbove;

  private final int shortBelow;

  /** Counts at or beyond these carry current. */
  private final int flowingBelow;

  private final int flowingAbove;
  private final int leastShortPairs;

  private long nextIndex = -1;
  private long slotEnd;

  /** Pairs in a row at short-circuit volts; goes on from slot to slot. */
  private int shortRun;

  /**
   * A builder for one source.
   *
   * @param pairsPerSecond rate of the source, at least {@value Slot#PER_SECOND}
   * @param scale scale of both channels
   * @param rule when a pair counts as short-circuited
   * @param listener called for every complete slot
   */
  public SlotBuilder(
      int pairsPerSecond, PairScale scale, ShortCircuitRule rule, SlotListener listener) {
    if (pairsPerSecond < Slot.PER_SECOND) {
      throw new IllegalArgumentException(
          "a slot needs at least one pair: pairs per second must be >= "
              + Slot.PER_SECOND
              + ": pairsPerSecond="
              + pairsPerSecond);
    }
    this.pairsPerSecond = pairsPerSecond;
    this.listener = listener;
    currentZero = clampedCeil(scale.current().zeroCount());
    voltageZero = clampedCeil(scale.voltage().zeroCount());
    double shortSpan = rule.volts() / Math.abs(scale.voltage().unitsPerCount());
    shortAbove = clampedFloor(scale.voltage().zeroCount() - shortSpan);
    shortBelow = clampedCeil(scale.voltage().zeroCount() + shortSpan);
    double flowSpan = rule.flowingAmps() / Math.abs(scale.current().unitsPerCount());
    flowingBelow = clampedFloor(scale.current().zeroCount() - flowSpan);
    flowingAbove = clampedCeil(scale.current().zeroCount() + flowSpan);
    leastShortPairs =
        ShortCircuitRule.isMeasurableAt(pairsPerSecond)
            ? Math.max(1, (int) Math.round(ShortCircuitRule.LEAST_SECONDS * pairsPerSecond))
            : Integer.MAX_VALUE;
  }

  private static int clampedCeil(double count) {
    return (int) Math.ceil(count);
  }

  private static int clampedFloor(double count) {
    return (int) Math.floor(count);
  }

  /**
   * Takes pairs that follow each other without a gap.
   *
   * @param current current counts
   * @param voltage voltage counts, same length in use
   * @param count pairs to take from the front of both arrays
   * @param firstIndex index of the first pair; not before the end of the last call
   */
  public void accept(short[] current, short[] voltage, int count, long firstIndex) {
    if (nextIndex < 0) {
      begin(firstIndex);
    } else if (firstIndex < nextIndex) {
      throw new IllegalArgumentException(
          "pairs must come in order: firstIndex=" + firstIndex + ", expected " + nextIndex);
    } else if (firstIndex > nextIndex) {
      skipTo(firstIndex);
    }
    int taken = 0;
    while (taken < count) {
      int until = (int) Math.min(count, taken + (slotEnd - nextIndex));
      accumulate(current, voltage, taken, until);
      nextIndex += until - taken;
      taken = until;
      if (nextIndex == slotEnd) {
        deliver();
      }
    }
  }

  private void begin(long firstIndex) {
    slot.number = firstIndex * Slot.PER_SECOND / pairsPerSecond;
    slotEnd = firstPairOf(slot.number + 1);
    slot.missingPairs = (int) (firstIndex - firstPairOf(slot.number));
    nextIndex = firstIndex;
  }

  private void skipTo(long firstIndex) {
    shortRun = 0;
    while (slotEnd <= firstIndex) {
      slot.missingPairs += (int) (slotEnd - nextIndex);
      nextIndex = slotEnd;
      deliver();
    }
    slot.missingPairs += (int) (firstIndex - nextIndex);
    nextIndex = firstIndex;
  }

  /** First pair index at or after the start of a slot. */
  private long firstPairOf(long slotNumber) {
    return (slotNumber * pairsPerSecond + Slot.PER_SECOND - 1) / Slot.PER_SECOND;
  }

  private void deliver() {
    listener.onSlot(slot);
    slot.sums.clear();
    slot.missingPairs = 0;
    slot.number++;
    slotEnd = firstPairOf(slot.number + 1);
  }

  /** The inner loop: everything stays in local variables until the slot's share is summed. */
  private void accumulate(short[] currentCounts, short[] voltageCounts, int from, int until) {
    long current = 0;
    long voltage = 0;
    long currentSquared = 0;
    long voltageSquared = 0;
    long product = 0;
    int currentSigns = 0;
    long currentSigned = 0;
    int voltageSigns = 0;
    long voltageSigned = 0;
    PairSums sums = slot.sums;
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
      int currentSign = i < currentZero ? -1 : 1;
      int voltageSign = v < voltageZero ? -1 : 1;
      currentSigns += currentSign;
      currentSigned += currentSign * i;
      voltageSigns += voltageSign;
      voltageSigned += voltageSign * v;
      lowestCurrent = Math.min(lowestCurrent, i);
      highestCurrent = Math.max(highestCurrent, i);
      lowestVoltage = Math.min(lowestVoltage, v);
      highestVoltage = Math.max(highestVoltage, v);
      boolean shorted = v > shortAbove & v < shortBelow & (i <= flowingBelow | i >= flowingAbove);
      run = shorted ? run + 1 : 0;
      shorts += run == leastShortPairs ? 1 : 0;
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
