package org.boothlamp.monitor;

import org.boothlamp.health.HealthFault;
import org.boothlamp.health.SensorHealth;

/**
 * Turns the faults of the sensors into events with a start and an end. Nothing is created after
 * construction. Confined to one thread.
 */
final class FaultEvents {

  /** Told of events as they begin and end. */
  interface Listener {

    /** A fault was found; it began at {@code onsetSlot}. */
    void onFaultBegan(EventKind kind, long onsetSlot);

    /** It is over. */
    void onFaultEnded(EventKind kind, long onsetSlot, long endSlot);
  }

  private static final HealthFault[] FAULTS = HealthFault.values();

  private final SensorHealth health;
  private final Listener listener;
  private final long[] onsets = new long[FAULTS.length];

  /** Faults whose event is open, one bit each. */
  private int open;

  FaultEvents(SensorHealth health, Listener listener) {
    this.health = health;
    this.listener = listener;
  }

  /**
   * Looks at what the last slot changed.
   *
   * @return true if any fault is active
   */
  boolean look() {
    change(health.activeBits());
    return open != 0;
  }

  /** Ends what is open. */
  void finish() {
    change(0);
  }

  private void change(int active) {
    int changed = active ^ open;
    open = active;
    for (int k = 0; changed != 0 && k < FAULTS.length; k++) {
      if ((changed >> k & 1) != 0) {
        tell(FAULTS[k], (active >> k & 1) != 0);
      }
    }
  }

  private void tell(HealthFault fault, boolean begins) {
    if (begins) {
      begin(fault);
    } else {
      end(fault);
    }
  }

  private void begin(HealthFault fault) {
    onsets[fault.ordinal()] = health.onsetSlot(fault);
    listener.onFaultBegan(EventKind.of(fault), onsets[fault.ordinal()]);
  }

  private void end(HealthFault fault) {
    long onset = onsets[fault.ordinal()];
    listener.onFaultEnded(EventKind.of(fault), onset, Math.max(onset, health.endSlot(fault)));
  }
}
