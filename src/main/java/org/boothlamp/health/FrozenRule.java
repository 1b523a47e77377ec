package org.boothlamp.health;

import org.boothlamp.arc.ArcState;

/**
 * A channel that does not move by one count while current flows. At idle a quiet channel may stand
 * still. Confined to one thread.
 */
final class FrozenRule {

  /**
   * 0.4 s: even a steady arc moves within a period of the mains, 20 ms; the rest is margin for a
   * coarse converter. Common practice, no source.
   */
  static final int CONFIRM_SLOTS = 40;

  final FaultState fault = new FaultState(CONFIRM_SLOTS);
  private int count;
  private int stillSlots;

  void accept(Reading reading, int lowest, int highest, boolean atLimit) {
    boolean still = lowest == highest;
    if (still && lowest == count) {
      stillSlots++;
    } else {
      stillSlots = still ? 1 : 0;
      fault.look(false, reading.number);
    }
    count = highest;
    if (reading.arc == ArcState.OFF) {
      fault.clear();
    } else {
      boolean asLongAsBefore = !fault.isActive() || stillSlots >= CONFIRM_SLOTS;
      fault.look(still && asLongAsBefore && reading.flowing && !atLimit, reading.number);
    }
  }

  /** Slots in a row at one and the same count. */
  int stillSlots() {
    return stillSlots;
  }
}
