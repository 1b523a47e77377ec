package org.boothlamp.health;

import org.boothlamp.arc.ArcState;
import org.boothlamp.procedure.Procedure;
import org.boothlamp.signal.PairScale;
import org.boothlamp.signal.PairSums;
import org.boothlamp.signal.Polarity;
import org.boothlamp.signal.Slot;

/**
 * What the rules ask of a slot, worked out once. Filled again for every slot that holds pairs.
 * Confined to one thread.
 */
final class Reading {

  /** Arcs burn between these volts; common practice, no source. */
  static final double LEAST_ARC_VOLTS = 8;

  /**
   * Above this no arc holds: open-circuit volts. From memory: stick arcs go out between 35 and 45.
   */
  static final double MOST_ARC_VOLTS = 45;

  private final PairScale scale;
  Slot slot;
  PairSums sums;
  long number;
  ArcState arc;
  boolean flowing;

  /** What the {@linkplain Procedure procedure} asks for; null if there is none. */
  Polarity asked;

  double amps;
  double absoluteAmps;
  double absoluteVolts;

  Reading(PairScale scale) {
    this.scale = scale;
  }

  void fill(Slot slot, ArcState arc, boolean flowing, Polarity asked) {
    this.slot = slot;
    this.arc = arc;
    this.flowing = flowing;
    this.asked = asked;
    sums = slot.sums();
    number = slot.number();
    amps = sums.meanAmps(scale);
    absoluteAmps = sums.meanAbsoluteAmps(scale);
    absoluteVolts = sums.meanAbsoluteVolts(scale);
  }

  boolean isAtArcVolts() {
    return absoluteVolts >= LEAST_ARC_VOLTS && absoluteVolts <= MOST_ARC_VOLTS;
  }
}
