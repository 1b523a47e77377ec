package org.boothlamp.health;

import org.boothlamp.signal.Slot;

/**
 * One fault's way from seen to certain and back: it is active once it was seen long enough, and
 * over once it was not seen for half a second. Confined to one thread.
 */
final class FaultState {

  /** Shorter breaks stay inside one fault, or a flicker would fill the log: 0.5 s. */
  static final int CLEAR_SLOTS = Slot.PER_SECOND / 2;

  private final int confirmLooks;
  private int looks;
  private long spellSlot;
  private boolean active;
  private long onsetSlot;
  private long lastSeenSlot;

  /** A fault that is active after so many looks in a row that saw it. */
  FaultState(int confirmLooks) {
    this.confirmLooks = confirmLooks;
  }

  void look(boolean seen, long slot) {
    look(seen, slot, slot);
  }

  /**
   * Takes the verdict of one look.
   *
   * @param firstSlot first slot that the look was at
   * @param slot the slot now
   */
  void look(boolean seen, long firstSlot, long slot) {
    if (!seen) {
      looks = 0;
      active = active && slot - lastSeenSlot < CLEAR_SLOTS;
      return;
    }
    if (looks == 0) {
      spellSlot = firstSlot;
    }
    looks++;
    if (active || looks >= confirmLooks) {
      raise(spellSlot, slot);
    }
  }

  /** The fault is certain, and has been there since {@code sinceSlot}. */
  void raise(long sinceSlot, long slot) {
    if (!active) {
      active = true;
      onsetSlot = sinceSlot;
    }
    lastSeenSlot = slot;
  }

  /** Nothing can be told from this slot: what is active stays so, what began begins anew. */
  void keep(long slot) {
    looks = 0;
    if (active) {
      lastSeenSlot = slot;
    }
  }

  /** What the fault was about is over. */
  void clear() {
    looks = 0;
    active = false;
  }

  boolean isActive() {
    return active;
  }

  /** First slot of the fault that is or was active. */
  long onsetSlot() {
    return onsetSlot;
  }

  /** First slot after the last in which it was seen. */
  long endSlot() {
    return lastSeenSlot + 1;
  }
}
