package org.boothlamp.judging;

import org.boothlamp.procedure.Quantity;
import org.boothlamp.signal.PairScale;
import org.boothlamp.signal.PairSums;
import org.boothlamp.signal.TrailingAverage;

/**
 * Judges the running segment: keeps the trailing average of its arc-on slots, compares it every 0.1
 * s with the windows of the pass, and follows the excursions. Nothing is created per slot. Confined
 * to one thread.
 *
 * <p>Order: {@link #begin}, then {@link #addArcOn} or {@link #addArcOff} for every slot of the
 * segment, then {@link #end}.
 */
public final class Judge {

  /** Told of excursions as they end, on the judging thread. */
  public interface Listener {

    /**
     * An excursion is over.
     *
     * @param quantity which average
     * @param excursion its figures; valid only during the call
     */
    void onExcursion(Quantity quantity, ExcursionTracker excursion);
  }

  private final JudgingRule rule;
  private final Listener listener;
  private final TrailingAverage trailing;
  private final Averages averages;
  private final LampTiming timing;
  private final ExcursionTracker[] trackers;

  private JudgingPlan plan;
  private long startSlot;
  private boolean nextSlotIsEdge;

  /** The slot after the last one with current: from there on the average stands still. */
  private long currentEndSlot;

  private Level level;
  private Level shown;

  /** A judge for pairs of one scale and rate. */
  public Judge(JudgingRule rule, PairScale scale, int pairsPerSecond, Listener listener) {
    this.rule = rule;
    this.listener = listener;
    trailing = new TrailingAverage(rule.averageSlots());
    averages = new Averages(scale, pairsPerSecond);
    timing = new LampTiming(rule.holdSlots());
    trackers = new ExcursionTracker[Quantity.values().length];
    for (int i = 0; i < trackers.length; i++) {
      trackers[i] = new ExcursionTracker(rule.excursionSlots());
    }
  }

  /**
   * Starts a segment.
   *
   * @param plan what to judge by, or null to judge nothing
   * @param startSlot first slot of the segment
   */
  public void begin(JudgingPlan plan, long startSlot) {
    this.plan = plan;
    this.startSlot = startSlot;
    currentEndSlot = startSlot;
    trailing.clear();
    timing.clear();
    nextSlotIsEdge = true;
    level = null;
    shown = null;
    for (int i = 0; plan != null && i < plan.size(); i++) {
      trackers[i].follow(plan.band(i));
    }
  }

  /** Takes the next slot of the segment, with current; judges if it is time to. */
  public void addArcOn(PairSums slot, long number) {
    if (!nextSlotIsEdge) {
      trailing.add(slot);
    }
    nextSlotIsEdge = false;
    currentEndSlot = number + 1;
    judgeIfDue(number);
  }

  /** Takes the next slot of the segment, without current or missing; the average stands still. */
  public void addArcOff(long number) {
    nextSlotIsEdge = true;
    judgeIfDue(number);
  }

  private void judgeIfDue(long number) {
    long elapsed = number + 1 - startSlot;
    if (plan != null
        && elapsed >= rule.settleSlots()
        && elapsed % JudgingRule.EVERY_SLOTS == 0
        && trailing.slots() > 0) {
      judge(number + 1);
    }
  }

  private void judge(long slot) {
    averages.look(trailing.sums(), plan.procedure().current());
    Level worst = Level.GREEN;
    for (int i = 0; i < plan.size(); i++) {
      if (averages.isMeasured(plan.band(i).window().quantity())) {
        worst = worst.worse(judge(plan.band(i), trackers[i]));
      }
    }
    level = worst;
    shown = timing.show(worst, slot);
  }

  /** What is judged without current is what the average was when the current ended. */
  private Level judge(CautionBand band, ExcursionTracker tracker) {
    double average = averages.of(band.window().quantity());
    if (tracker.accept(average, currentEndSlot)) {
      listener.onExcursion(band.window().quantity(), tracker);
    }
    return band.level(average);
  }

  /** Ends the segment at a slot; excursions that are open end with it, or with the last current. */
  public void end(long endSlot) {
    long excursionEnd = Math.min(endSlot, currentEndSlot);
    for (int i = 0; plan != null && i < plan.size(); i++) {
      if (trackers[i].finish(excursionEnd)) {
        listener.onExcursion(plan.band(i).window().quantity(), trackers[i]);
      }
    }
  }

  /** What the averages say now; null while the segment is not judged. */
  public Level level() {
    return level;
  }

  /** What the lamp shows of it; null while the segment is not judged. */
  public Level shown() {
    return shown;
  }

  /** Sums of the trailing average, for the status line. */
  public PairSums average() {
    return trailing.sums();
  }
}
