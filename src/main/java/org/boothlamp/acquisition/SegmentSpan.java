package org.boothlamp.acquisition;

import org.boothlamp.monitor.SampleBlock;
import org.boothlamp.signal.Slot;

/**
 * Which pairs belong to a segment's recording: half a second before its contact and after its end,
 * but nothing of the contacts before and after it, which would be found again in a replay.
 *
 * <p>A recording begins where the live slots and those of its replay fall together, so that both
 * come to the same sums. Where a rate's slots are not equally long, that can be up to a second
 * earlier than its first pair: those pairs count as missing.
 */
final class SegmentSpan {

  /** Before the contact and after the end. */
  static final int MARGIN_SLOTS = Slot.PER_SECOND / 2;

  private final int pairsPerSecond;
  private final long origin;
  private final long firstIncluded;
  private final long contact;
  private long end = Long.MAX_VALUE;
  private boolean ended;

  /**
   * A span without an end.
   *
   * @param contactSlot first slot with current
   * @param previousEndSlot first slot after the contact before, or 0
   */
  SegmentSpan(int pairsPerSecond, long contactSlot, long previousEndSlot) {
    this.pairsPerSecond = pairsPerSecond;
    long first = Math.max(Math.max(0, contactSlot - MARGIN_SLOTS), previousEndSlot);
    firstIncluded = firstPairOf(first);
    origin = firstPairOf(first - first % slotsInStep(pairsPerSecond));
    contact = firstPairOf(contactSlot);
  }

  /** After so many slots a slot begins exactly on a pair again. */
  private static int slotsInStep(int pairsPerSecond) {
    int step = 1;
    while ((long) step * pairsPerSecond % Slot.PER_SECOND != 0) {
      step++;
    }
    return step;
  }

  /** How far back pairs must be held for a contact that may be told of next. */
  static long mostPairsBefore(int pairsPerSecond) {
    return 2L * pairsPerSecond + SampleBlock.CAPACITY;
  }

  /** The segment has ended before this slot. */
  void end(long endSlot) {
    ended = true;
    end = Math.min(end, firstPairOf(endSlot + MARGIN_SLOTS));
  }

  /** Another contact begins with this slot. */
  void endBefore(long nextContactSlot) {
    end = Math.min(end, firstPairOf(nextContactSlot));
  }

  private long firstPairOf(long slot) {
    return (slot * pairsPerSecond + Slot.PER_SECOND - 1) / Slot.PER_SECOND;
  }

  int pairsPerSecond() {
    return pairsPerSecond;
  }

  /** Index of the source that is the recording's pair 0. */
  long origin() {
    return origin;
  }

  /** Index of the first pair that is written. */
  long firstIncluded() {
    return firstIncluded;
  }

  /** Index of the first pair with current. */
  long contact() {
    return contact;
  }

  /** Index of the first pair that is no longer written. */
  long end() {
    return end;
  }

  /** True once the end is known. */
  boolean isEnded() {
    return ended;
  }
}
