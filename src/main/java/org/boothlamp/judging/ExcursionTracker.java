package org.boothlamp.judging;

/**
 * Follows one average and finds the spells in which it is outside its window. Confined to one
 * thread.
 *
 * <p>A spell starts at the first judgement outside and ends at the first one inside again, or on
 * the other side. It is an excursion if it lasted long enough.
 */
public final class ExcursionTracker {

  private final long leastSlots;
  private CautionBand band;

  private boolean open;
  private Side openSide = Side.LOW;
  private long openStartSlot;
  private double openWorst;

  private Side side = Side.LOW;
  private long startSlot;
  private long endSlot;
  private double worst;

  /**
   * A tracker without a window.
   *
   * @param leastSlots length from which a spell is an excursion, in slots
   */
  public ExcursionTracker(long leastSlots) {
    this.leastSlots = leastSlots;
  }

  /** Follows another window from now on; an open spell is forgotten. */
  public void follow(CautionBand band) {
    this.band = band;
    open = false;
  }

  /**
   * Takes the average judged at a slot.
   *
   * @return true if an excursion ended at this slot; its figures hold until the next one ends
   */
  public boolean accept(double average, long slot) {
    if (!band.isOutside(average)) {
      return finish(slot);
    }
    Side now = average > band.window().high() ? Side.HIGH : Side.LOW;
    if (open && now == openSide) {
      openWorst = now == Side.HIGH ? Math.max(openWorst, average) : Math.min(openWorst, average);
      return false;
    }
    boolean ended = finish(slot);
    open = true;
    openSide = now;
    openStartSlot = slot;
    openWorst = average;
    return ended;
  }

  /** Ends an open spell at a slot; true if it was an excursion. */
  public boolean finish(long slot) {
    if (!open) {
      return false;
    }
    open = false;
    side = openSide;
    startSlot = openStartSlot;
    endSlot = slot;
    worst = openWorst;
    return endSlot - startSlot >= leastSlots;
  }

  /** The window followed, with its band. */
  public CautionBand band() {
    return band;
  }

  /** Side of the excursion that ended last. */
  public Side side() {
    return side;
  }

  /** First slot of the excursion that ended last. */
  public long startSlot() {
    return startSlot;
  }

  /** First slot after the excursion that ended last. */
  public long endSlot() {
    return endSlot;
  }

  /** The average farthest outside, in the quantity's unit. */
  public double worst() {
    return worst;
  }
}
