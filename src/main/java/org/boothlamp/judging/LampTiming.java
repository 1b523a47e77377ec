package org.boothlamp.judging;

/**
 * Keeps the lamp from flickering: a worse level shows at once, a better one only after it has held.
 * In other words, the lamp shows the worst level of the holding time. Confined to one thread.
 */
public final class LampTiming {

  private final long holdSlots;

  /**
   * Slots at which the spell "better than red" and the spell "green" began; valid while they last.
   */
  private long betterThanRedSince;

  private long greenSince;
  private Level lastJudged;

  /**
   * A lamp that shows nothing yet.
   *
   * @param holdSlots how long a better level must hold, in slots, at least 0
   */
  public LampTiming(long holdSlots) {
    this.holdSlots = holdSlots;
  }

  /** Starts anew: the next level shows at once, whatever it is. */
  public void clear() {
    lastJudged = null;
  }

  /** Takes the level judged at a slot, later than the one before, and returns the level to show. */
  public Level show(Level judged, long slot) {
    if (lastJudged == null) {
      betterThanRedSince = slot - holdSlots;
      greenSince = slot - holdSlots;
    } else {
      noteNewSpells(judged, slot);
    }
    lastJudged = judged;
    if (judged == Level.RED || slot - betterThanRedSince < holdSlots) {
      return Level.RED;
    }
    return judged == Level.AMBER || slot - greenSince < holdSlots ? Level.AMBER : Level.GREEN;
  }

  private void noteNewSpells(Level judged, long slot) {
    if (lastJudged == Level.RED && judged != Level.RED) {
      betterThanRedSince = slot;
    }
    if (lastJudged != Level.GREEN && judged == Level.GREEN) {
      greenSince = slot;
    }
  }
}
