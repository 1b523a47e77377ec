package org.boothlamp.health;

import org.boothlamp.signal.Slot;

/** Pairs that never arrived. Confined to one thread. */
final class GapRule {

  static final int WINDOW_SLOTS = Slot.PER_SECOND / 2;

  /**
   * Share of the window. What is lost in bursts is not lost by chance: with more of it missing the
   * average can lie anywhere in a window's caution band, a tenth as well. Common practice, no
   * source.
   */
  static final double SHARE = 0.1;

  final FaultState fault = new FaultState(1);
  private final double mostMissing;
  private final int[] missing = new int[WINDOW_SLOTS];
  private int total;
  private int next;

  GapRule(int pairsPerSecond) {
    mostMissing = SHARE * WINDOW_SLOTS * pairsPerSecond / Slot.PER_SECOND;
  }

  void accept(Slot slot) {
    total += slot.missingPairs() - missing[next];
    missing[next] = slot.missingPairs();
    next = next + 1 == WINDOW_SLOTS ? 0 : next + 1;
    if (total > mostMissing) {
      fault.raise(slot.number() - WINDOW_SLOTS + 1 + firstMissing(), slot.number());
    } else {
      fault.clear();
    }
  }

  private int firstMissing() {
    int place = next;
    int first = 0;
    while (!fault.isActive() && missing[place] == 0) {
      place = place + 1 == WINDOW_SLOTS ? 0 : place + 1;
      first++;
    }
    return first;
  }
}
