package org.boothlamp.monitor;

import java.util.Arrays;
import org.boothlamp.judging.Signal;
import org.boothlamp.signal.Slot;

/**
 * How long each signal held inside a segment. Slots without current count only once the current has
 * come back. Confined to one thread.
 */
final class JudgedTime {

  private final long[] slots = new long[Signal.values().length];
  private final long[] waiting = new long[slots.length];

  void clear() {
    Arrays.fill(slots, 0);
    Arrays.fill(waiting, 0);
  }

  void addArcOn(Signal signal) {
    for (int i = 0; i < slots.length; i++) {
      slots[i] += waiting[i];
      waiting[i] = 0;
    }
    slots[signal.ordinal()]++;
  }

  void addArcOff(Signal signal) {
    waiting[signal.ordinal()]++;
  }

  double seconds(Signal signal) {
    return slots[signal.ordinal()] * Slot.SECONDS;
  }
}
