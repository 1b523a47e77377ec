package org.boothlamp.monitor;

import org.boothlamp.signal.PairSums;
import org.boothlamp.signal.Slot;

/**
 * Reduces a segment's slots to trace points of five slots. Slots without current wait until the
 * current comes back, and are forgotten if it does not: a trace ends where its segment ends. Fixed
 * memory for the longest bridge; nothing is created per slot. Confined to one thread.
 */
final class TraceReducer {

  /** Takes trace points as they are complete. */
  interface Listener {

    /** A point of up to {@link #SLOTS_PER_POINT} slots; no pairs in it means missing time. */
    void onPoint(PairSums point);
  }

  static final int SLOTS_PER_POINT = Slot.PER_SECOND / LogEntry.TRACE_HZ;

  private final Listener listener;
  private final PairSums[] waiting;
  private final PairSums point = new PairSums();
  private int waitingSlots;
  private int pointSlots;

  TraceReducer(int bridgeSlots, Listener listener) {
    this.listener = listener;
    waiting = new PairSums[bridgeSlots + 1];
    for (int i = 0; i < waiting.length; i++) {
      waiting[i] = new PairSums();
    }
  }

  void clear() {
    waitingSlots = 0;
    pointSlots = 0;
    point.clear();
  }

  void addArcOn(PairSums slot) {
    for (int i = 0; i < waitingSlots; i++) {
      add(waiting[i]);
    }
    waitingSlots = 0;
    add(slot);
  }

  void addArcOff(PairSums slot) {
    if (waitingSlots < waiting.length) {
      waiting[waitingSlots++].set(slot);
    }
  }

  /** Delivers what is left of the segment. */
  void end() {
    if (pointSlots > 0) {
      deliver();
    }
    waitingSlots = 0;
  }

  private void add(PairSums slot) {
    point.add(slot);
    if (++pointSlots == SLOTS_PER_POINT) {
      deliver();
    }
  }

  private void deliver() {
    listener.onPoint(point);
    point.clear();
    pointSlots = 0;
  }
}
