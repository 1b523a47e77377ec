package org.boothlamp.arc;

import org.boothlamp.signal.PairSums;
import org.boothlamp.signal.Slot;

/**
 * Sums over the arc-on slots of one segment.
 *
 * <p>A slot at either edge of the arc may hold arc for part of its time. Energy and short circuits
 * take it whole; the means take only the part between its first and its last pair with current, or
 * the open-circuit volts beside a short tack would spoil them. Whether a slot is the last before an
 * edge is known only one slot later; until then it waits. Nothing is created per slot. Confined to
 * one thread.
 */
public final class SegmentTally {

  private final PairSums all = new PairSums();
  private final PairSums settled = new PairSums();
  private final PairSums arcOn = new PairSums();

  private final PairSums waitingWhole = new PairSums();
  private final PairSums waitingPart = new PairSums();
  private boolean waiting;

  /** True if the slot that waits is the first after an edge. */
  private boolean waitingIsFirst;

  /** Forgets the last segment. */
  public void clear() {
    all.clear();
    settled.clear();
    waiting = false;
  }

  /** Adds a slot with current. */
  public void addArcOn(Slot slot) {
    all.add(slot.sums());
    boolean first = !waiting;
    if (waiting) {
      settled.add(waitingIsFirst ? waitingPart : waitingWhole);
    }
    waitingWhole.set(slot.sums());
    slot.sumFlowing(waitingPart);
    waiting = true;
    waitingIsFirst = first;
  }

  /** The current was off or unknown for a slot: the slots on both sides of it are edges. */
  public void addArcOff() {
    if (waiting) {
      settled.add(waitingPart);
      waiting = false;
    }
  }

  /** Sums of every arc-on slot, whole: for energy and counts. */
  public PairSums all() {
    return all;
  }

  /** Sums while the arc was on, up to the last slot added: for means. Filled again at each call. */
  public PairSums arcOn() {
    arcOn.set(settled);
    if (waiting) {
      arcOn.add(waitingPart);
    }
    return arcOn;
  }
}
