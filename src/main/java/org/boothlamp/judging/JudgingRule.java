package org.boothlamp.judging;

import org.boothlamp.signal.Slot;

/**
 * Times of the judging, in slots. Immutable.
 *
 * @param averageSlots length of the trailing average, at least 1
 * @param settleSlots time from the start of a segment that is not judged, at least 0
 * @param holdSlots how long a better level must hold before it shows, at least 0
 * @param excursionSlots the shortest excursion, at least 1
 */
public record JudgingRule(int averageSlots, int settleSlots, int holdSlots, int excursionSlots) {

  /** Slots between two judgements: 0.1 s. */
  public static final int EVERY_SLOTS = Slot.PER_SECOND / 10;

  /** 1.0 s, 1.0 s, 0.5 s, 0.3 s. */
  public static final JudgingRule STANDARD = ofSeconds(1.0, 1.0, 0.5, 0.3);

  public JudgingRule {
    if (averageSlots < 1 || settleSlots < 0 || holdSlots < 0 || excursionSlots < 1) {
      throw new IllegalArgumentException(
          "judging rule out of range: averageSlots="
              + averageSlots
              + ", settleSlots="
              + settleSlots
              + ", holdSlots="
              + holdSlots
              + ", excursionSlots="
              + excursionSlots);
    }
  }

  /** A rule with its times in seconds, rounded to whole slots. */
  public static JudgingRule ofSeconds(
      double averageSeconds, double settleSeconds, double holdSeconds, double excursionSeconds) {
    return new JudgingRule(
        slots(averageSeconds), slots(settleSeconds), slots(holdSeconds), slots(excursionSeconds));
  }

  private static int slots(double seconds) {
    return (int) Math.round(seconds * Slot.PER_SECOND);
  }
}
