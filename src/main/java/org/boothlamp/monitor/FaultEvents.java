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
  private final boolean[] open = new boolean[FAULTS.length];
  private final long[] onsets = new long[FAULTS.length];

  FaultEvents(SensorHealth health, Listener listener) {
    this.health = health;
    this.listener = listener;
  }

  /** Looks at what the last slot changed. */
  void look() {
    for (HealthFault fault : FAULTS) {
      boolean active = health.isActive(fault);
      if (active != open[fault.ordinal()]) {
        if (active) {
          begin(fault);
        } else {
          end(fault);
        }
      }
    }
  }

  /** Ends what is open. */
  void finish() {
    for (HealthFault fault : FAULTS) {
      if (open[fault.ordinal()]) {
        end(fault);
      }
    }
  }

  private void begin(HealthFault fault) {
    open[fault.ordinal()] = true;
    onsets[fault.ordinal()] = health.onsetSlot(fault);
    listener.onFaultBegan(EventKind.of(fault), onsets[fault.ordinal()]);
  }

  private void end(HealthFault fault) {
    open[fault.ordinal()] = false;
    long onset = onsets[fault.ordinal()];
    listener.onFaultEnded(EventKind.of(fault), onset, Math.max(onset, health.endSlot(fault)));
  }
}
