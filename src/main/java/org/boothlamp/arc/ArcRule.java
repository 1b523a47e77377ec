package org.boothlamp.arc;

import org.boothlamp.signal.Slot;

/**
 * When an arc counts as burning. Immutable.
 *
 * @param arcOnAmps mean absolute current of a slot from which an arc may have begun, above 0
 * @param confirmSlots slots at arc volts, those at either edge left out, that make it so; at least
 *     1
 * @param bridgeSlots the longest interruption, in slots, that stays inside a segment
 * @param minSegmentSlots the shortest segment; what is shorter is a touch
 * @param shortCircuitVolts mean absolute volts below which a slot is a contact, not an arc
 */
public record ArcRule(
    double arcOnAmps,
    int confirmSlots,
    int bridgeSlots,
    int minSegmentSlots,
    double shortCircuitVolts) {

  /** Share of {@link #arcOnAmps} below which the current counts as off. */
  public static final double OFF_SHARE = 0.6;

  /** A contact longer than this, in slots, is a stuck electrode: 0.5 s. */
  public static final int STUCK_SLOTS = Slot.PER_SECOND / 2;

  /** 15 A, 0.05 s, 0.3 s, 0.3 s, 8 V. */
  public static final ArcRule STANDARD = ofSeconds(15, 0.05, 0.3, 0.3, 8);

  public ArcRule {
    if (!(arcOnAmps > 0)
        || confirmSlots < 1
        || bridgeSlots < 0
        || minSegmentSlots < 1
        || !(shortCircuitVolts > 0)) {
      throw new IllegalArgumentException(
          "arc rule out of range: arcOnAmps="
              + arcOnAmps
              + ", confirmSlots="
              + confirmSlots
              + ", bridgeSlots="
              + bridgeSlots
              + ", minSegmentSlots="
              + minSegmentSlots
              + ", shortCircuitVolts="
              + shortCircuitVolts);
    }
  }

  /** A rule with its times in seconds, rounded to whole slots. */
  public static ArcRule ofSeconds(
      double arcOnAmps,
      double confirmSeconds,
      double bridgeSeconds,
      double minSegmentSeconds,
      double shortCircuitVolts) {
    return new ArcRule(
        arcOnAmps,
        slots(confirmSeconds),
        slots(bridgeSeconds),
        slots(minSegmentSeconds),
        shortCircuitVolts);
  }

  private static int slots(double seconds) {
    return (int) Math.round(seconds * Slot.PER_SECOND);
  }

  /** This rule with another arc-on current, or itself if {@code amps} is NaN. */
  public ArcRule withArcOnAmps(double amps) {
    return Double.isNaN(amps)
        ? this
        : new ArcRule(amps, confirmSlots, bridgeSlots, minSegmentSlots, shortCircuitVolts);
  }

  /** Mean absolute current of a slot below which the current counts as off. */
  public double arcOffAmps() {
    return OFF_SHARE * arcOnAmps;
  }
}
