package org.boothlamp.health;

import org.boothlamp.arc.ArcState;
import org.boothlamp.signal.Slot;

/** Whether it is certain that no current flows. Confined to one thread. */
final class IdleWatch {

  /** 0.5 s since the last current: welding machines have run down, the clamp's core has settled. */
  private static final int QUIET_SLOTS = Slot.PER_SECOND / 2;

  /** Below this no arc burns, with room for hum; a weak arc can hide only above it. */
  private static final double NO_ARC_VOLTS = 6;

  /** A voltage that stood still for 0.1 s may be frozen, and proves nothing against a current. */
  private static final int STILL_SLOTS = 10;

  /** No welding current is smaller, and with the voltage of none it is no current at all. */
  private static final double LEAST_WELDING_AMPS = 15;

  private int offSlots;
  private boolean quiet;
  private boolean impossible;

  void accept(Reading reading, boolean voltageAtLimit, int voltageStillSlots) {
    offSlots = reading.flowing ? 0 : offSlots + 1;
    boolean open = reading.absoluteVolts > Reading.MOST_ARC_VOLTS;
    boolean dead = reading.absoluteVolts < NO_ARC_VOLTS;
    quiet =
        reading.arc == ArcState.OFF && offSlots > QUIET_SLOTS && (open || dead) && !voltageAtLimit;
    impossible =
        reading.flowing
            && !voltageAtLimit
            && (open ? voltageStillSlots < STILL_SLOTS : isTooLittle(reading));
  }

  private static boolean isTooLittle(Reading reading) {
    return reading.absoluteAmps < LEAST_WELDING_AMPS
        && reading.absoluteVolts < LostVoltageRule.LEAST_VOLTS;
  }

  /** No current flows, and none is shown that could be taken for one. */
  boolean isQuiet() {
    return quiet;
  }

  /** A current is shown that cannot be: at open-circuit volts, or a small one at no volts. */
  boolean isImpossibleCurrent() {
    return impossible;
  }
}
