package org.boothlamp.monitor;

import java.util.Arrays;
import org.boothlamp.judging.Signal;
import org.boothlamp.signal.Slot;

/**
 * How long each signal held inside a segment. Slots without current count only once the current has
 * come back. Remembers the last slots one by one, because a fault is known only some time after it
 * began: what was judged meanwhile is taken back. Nothing is created after construction. Confined
 * to one thread.
 */
final class JudgedTime {

  /**
   * As long as it may take to find a fault: half a second, but {@value RateWatch#LONGEST_SECONDS} s
   * for a small drift of the source's clock.
   */
  static final int RECALL_SLOTS = RateWatch.LONGEST_SECONDS * Slot.PER_SECOND;

  private final long[] slots = new long[Signal.values().length];
  private final long[] waiting = new long[slots.length];

  /** Ordinals of the last slots' signals. */
  private final byte[] recent = new byte[RECALL_SLOTS];

  private int next;

  private long total;
  private long waitingTotal;

  void clear() {
    Arrays.fill(slots, 0);
    Arrays.fill(waiting, 0);
    total = 0;
    waitingTotal = 0;
  }

  void addArcOn(Signal signal) {
    if (waitingTotal > 0) {
      countWaiting();
    }
    slots[signal.ordinal()]++;
    remember(signal);
  }

  private void countWaiting() {
    for (int i = 0; i < slots.length; i++) {
      slots[i] += waiting[i];
      waiting[i] = 0;
    }
    waitingTotal = 0;
  }

  void addArcOff(Signal signal) {
    waiting[signal.ordinal()]++;
    waitingTotal++;
    remember(signal);
  }

  private void remember(Signal signal) {
    recent[next] = (byte) signal.ordinal();
    next = next + 1 == RECALL_SLOTS ? 0 : next + 1;
    total++;
  }

  /** Counts the last slots added to the fault instead, as far as they are remembered. */
  void recall(long lastSlots) {
    long most = Math.min(Math.min(lastSlots, RECALL_SLOTS), total);
    for (long back = 1; back <= most; back++) {
      int place = Math.floorMod((int) (next - back), RECALL_SLOTS);
      long[] counts = back <= waitingTotal ? waiting : slots;
      counts[recent[place]]--;
      counts[Signal.FAULT.ordinal()]++;
      recent[place] = (byte) Signal.FAULT.ordinal();
    }
  }

  double seconds(Signal signal) {
    return slots[signal.ordinal()] * Slot.SECONDS;
  }
}
