package org.boothlamp.monitor;

import org.boothlamp.signal.PairScale;
import org.boothlamp.signal.ShortCircuitRule;
import org.boothlamp.signal.ShortCycles;
import org.boothlamp.signal.Slot;
import org.boothlamp.signal.Swings;

/**
 * How metal and current come over in one segment: the cycles of its short circuits, the swings of
 * its current. Both need a fast source and stay empty on a slow one. Nothing is created per slot.
 * Confined to one thread.
 */
final class TransferTally {

  private final PairScale scale;
  private final boolean fast;
  private final ShortCycles shortCycles = new ShortCycles();
  private final Swings swings = new Swings();

  TransferTally(PairScale scale, int pairsPerSecond) {
    this.scale = scale;
    fast = ShortCircuitRule.isMeasurableAt(pairsPerSecond);
  }

  void clear() {
    shortCycles.clear();
    swings.clear();
  }

  void addArcOn(Slot slot) {
    if (slot.shortCycles().shorts() > 0) {
      shortCycles.add(slot.shortCycles());
    }
    if (fast) {
      swings.accept(slot, scale);
    }
  }

  void fill(SegmentFigures figures) {
    figures.shortCycles.set(shortCycles);
    figures.swings.set(swings);
  }
}
