package org.boothlamp.monitor;

import java.util.Arrays;
import org.boothlamp.judging.Signal;
import org.boothlamp.signal.Slot;

/**
 * How long each signal held inside a segment. Slots without current count only once the current has
 * come back. Remembers the last half second slot by slot, because a fault is known only some time
 * after it began: what was judged meanwhile is taken back. Nothing is created after construction.
 * Confined to one thread.
 */
final class JudgedTime {

  /** As long as it may take to find a fault: 0.5 s. */
  static final int RECALL_SLOTS = Slot.PER_SECOND / 2;

  private final long[] slots = new long[Signal.values().length];
  private final long[] waiting = new long[slots.length];

  /** Ordinals of the last slots' signals; place {@code total % length} is the next. */
  private final int[] recent = new int[RECALL_SLOTS];

  private long total;
  private long waitingTotal;

  void clear() {
    Arrays.fill(slots, 0);
    Arrays.fill(waiting, 0);
    total = 0;
    waitingTotal = 0;
  }

  void addArcOn(Signal signal) {
    for (int i = 0; i < slots.length; i++) {
      slots[i] += waiting[i];
      waiting[i] = 0;
    }
    waitingTotal = 0;
    slots[signal.ordinal()]++;
    remember(signal);
  }

  void addArcOff(Signal signal) {
    waiting[signal.ordinal()]++;
    waitingTotal++;
    remember(signal);
  }

  private void remember(Signal signal) {
    recent[(int) (total % RECALL_SLOTS)] = signal.ordinal();
    total++;
  }

  /** Counts the last slots added to the fault instead, as far as they are remembered. */
  void recall(long lastSlots) {
    long most = Math.min(Math.min(lastSlots, RECALL_SLOTS), total);
    for (long back = 1; back <= most; back++) {
      int place = (int) ((total - back) % RECALL_SLOTS);
      long[] counts = back <= waitingTotal ? waiting : slots;
      counts[recent[place]]--;
      counts[Signal.FAULT.ordinal()]++;
      recent[place] = Signal.FAULT.ordinal();
    }
  }

  double seconds(Signal signal) {
    return slots[signal.ordinal()] * Slot.SECONDS;
  }
}
