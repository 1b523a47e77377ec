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
  private final PairScale scale;
  private final SlotListener listener;
  private final Slot slot;

  private int nextOffset;
  private long nextIndex = -1;
  private long slotEnd;

  /** Pairs at the front of the slot that are in its sums already. */
  private int summed;

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
    this.scale = scale;
    this.listener = listener;
    slot =
        new Slot(pairsPerSecond / Slot.PER_SECOND + 1, new PairLoop(pairsPerSecond, scale, rule));
  }

  /**
   * Another rule from the next slot on. Creates objects: for a change of procedure, not for every
   * slot.
   */
  public void setRule(ShortCircuitRule rule) {
    slot.loop = new PairLoop(pairsPerSecond, scale, rule);
  }

  /**
   * Takes so many counts off every current count, from the next slot on: a clamp's zero that moved.
   *
   * @param counts so few that no count of the converter leaves 16 bits by much; one that does stays
   *     at the end of the range
   */
  public void setCurrentOffset(int counts) {
    nextOffset = counts;
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
      int part = (int) Math.min(count - taken, slotEnd - nextIndex);
      copyCurrent(current, taken, part);
      System.arraycopy(voltage, taken, slot.voltage, slot.count, part);
      slot.count += part;
      nextIndex += part;
      taken += part;
      if (nextIndex == slotEnd) {
        deliver();
      }
    }
  }

  private void copyCurrent(short[] current, int from, int pairs) {
    int offset = slot.currentOffset;
    if (offset == 0) {
      System.arraycopy(current, from, slot.current, slot.count, pairs);
      return;
    }
    for (int k = 0; k < pairs; k++) {
      int count = current[from + k] - offset;
      slot.current[slot.count + k] =
          (short) Math.max(Short.MIN_VALUE, Math.min(Short.MAX_VALUE, count));
    }
  }

  private void begin(long firstIndex) {
    slot.number = firstIndex * Slot.PER_SECOND / pairsPerSecond;
    slotEnd = firstPairOf(slot.number + 1);
    slot.missingPairs = (int) (firstIndex - firstPairOf(slot.number));
    nextIndex = firstIndex;
  }

  private void skipTo(long firstIndex) {
    sumUp();
    slot.loop.breakShort();
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

  private void sumUp() {
    slot.loop.add(slot.current, slot.voltage, summed, slot.count, slot.sums);
    summed = slot.count;
  }

  private void deliver() {
    sumUp();
    listener.onSlot(slot);
    if (slot.loop.cycles.shorts() > 0) {
      slot.loop.cycles.clear();
    }
    slot.sums.clear();
    slot.count = 0;
    summed = 0;
    slot.missingPairs = 0;
    slot.currentOffset = nextOffset;
    slot.number++;
    slotEnd = firstPairOf(slot.number + 1);
  }
}
