package org.boothlamp.health;

import org.boothlamp.arc.ArcState;

/** Current without voltage: a tap is off. Confined to one thread. */
final class LostVoltageRule {

  /**
   * Even an electrode that is stuck has a volt or more across it at welding current. Common
   * practice, no source.
   */
  static final double LEAST_VOLTS = 0.5;

  /** 0.3 s: longer than any short circuit of a droplet. */
  static final int CONFIRM_SLOTS = 30;

  final FaultState fault = new FaultState(CONFIRM_SLOTS);

  /**
   * Takes a slot.
   *
   * @param currentInDoubt true if the current itself is no current, as far as is known
   */
  void accept(Reading reading, boolean currentInDoubt) {
    if (reading.arc == ArcState.OFF) {
      fault.clear();
    } else {
      boolean lost = reading.flowing && reading.absoluteVolts < LEAST_VOLTS;
      fault.look(lost && !currentInDoubt, reading.number);
    }
  }
}
