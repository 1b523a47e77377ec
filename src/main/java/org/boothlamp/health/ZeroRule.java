package org.boothlamp.health;

import org.boothlamp.signal.ChannelScale;
import org.boothlamp.signal.PairScale;
import org.boothlamp.signal.TrailingAverage;

/**
 * The clamp's zero, looked at while it is certain that no current flows. Follows it in whole counts
 * within a band; beyond the band it is a fault, which lasts until a zero inside the band was seen.
 * Confined to one thread.
 */
final class ZeroRule {

  /**
   * A clamp's core keeps an ampere or two after a large current; more is something else, and 3 A is
   * 3 % of a small stick electrode's current. Common practice, no source.
   */
  static final double BAND_AMPS = 3;

  /** The way back from the fault is a little longer, or noise at the band would flicker. */
  private static final double BACK_SHARE = 0.9;

  /** Less than this is not worth a correction. */
  private static final double LEAST_AMPS = 0.2;

  /** 0.3 s: mains hum is gone from the mean, and noise nearly. */
  private static final int WINDOW_SLOTS = 30;

  final FaultState fault = new FaultState(1);
  private final ChannelScale scale;
  private final TrailingAverage zero = new TrailingAverage(WINDOW_SLOTS);
  private int offsetCounts;
  private boolean known;
  private int impossibleSlots;
  private long impossibleSlot;

  ZeroRule(PairScale scale) {
    this.scale = scale.current();
  }

  void accept(Reading reading, IdleWatch idle) {
    boolean impossible = idle.isImpossibleCurrent() && Math.abs(reading.amps) > BAND_AMPS;
    impossibleSlots = impossible ? impossibleSlots + 1 : 0;
    if (idle.isQuiet()) {
      follow(reading);
      return;
    }
    zero.clear();
    fault.keep(reading.number);
    if (impossibleSlots == 1) {
      impossibleSlot = reading.number;
    }
    if (impossibleSlots >= WINDOW_SLOTS) {
      fault.raise(impossibleSlot, reading.number);
    }
  }

  private void follow(Reading reading) {
    zero.add(reading.sums);
    if (zero.slots() < WINDOW_SLOTS) {
      fault.keep(reading.number);
      return;
    }
    double moved = zero.sums().meanCurrentCount() - scale.zeroCount();
    double share = fault.isActive() ? BACK_SHARE : 1;
    boolean beyond = Math.abs(amps(offsetCounts + moved)) > share * BAND_AMPS;
    known = !beyond;
    fault.look(beyond, reading.number - WINDOW_SLOTS + 1, reading.number);
    if (!beyond && Math.round(moved) != 0 && Math.abs(amps(moved)) >= LEAST_AMPS) {
      offsetCounts += (int) Math.round(moved);
      zero.clear();
    }
  }

  private double amps(double counts) {
    return counts * scale.unitsPerCount();
  }

  /** True if the zero was inside the band when it was last seen. */
  boolean isKnown() {
    return known;
  }

  /** Counts to take off every current count. */
  int offsetCounts() {
    return offsetCounts;
  }
}
