package org.boothlamp.signal;

/**
 * The sums of the last N slots that were added: what the trailing average is made of.
 *
 * <p>A fixed ring; each slot added pushes the oldest out, exactly, because the sums are whole
 * numbers. Confined to one thread.
 */
public final class TrailingAverage {

  private final PairSums[] ring;
  private final PairSums total = new PairSums();
  private int next;
  private int held;

  /**
   * An empty average.
   *
   * @param slots length, at least 1
   */
  public TrailingAverage(int slots) {
    if (slots < 1) {
      throw new IllegalArgumentException("an average needs at least one slot: slots=" + slots);
    }
    ring = new PairSums[slots];
    for (int i = 0; i < slots; i++) {
      ring[i] = new PairSums();
    }
  }

  /** Forgets all slots. */
  public void clear() {
    total.clear();
    next = 0;
    held = 0;
  }

  /** Adds a slot's sums; the oldest leave once the ring is full. */
  public void add(PairSums slot) {
    PairSums place = ring[next];
    if (held == ring.length) {
      total.subtract(place);
    } else {
      held++;
    }
    place.set(slot);
    total.add(slot);
    next = next + 1 == ring.length ? 0 : next + 1;
  }

  /** Sums over the slots held; their extremes are those since the last {@link #clear}. */
  public PairSums sums() {
    return total;
  }

  /** Slots held, 0 to the ring's length. */
  public int slots() {
    return held;
  }
}
