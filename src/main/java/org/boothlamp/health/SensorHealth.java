package org.boothlamp.health;

import org.boothlamp.arc.ArcState;
import org.boothlamp.signal.PairScale;
import org.boothlamp.signal.Polarity;
import org.boothlamp.signal.Slot;

/**
 * Watches slot by slot whether the sensors can be believed, and where the clamp's zero is. Knows
 * every {@link HealthFault} but those that need a clock, the sample rate and the clock's drift.
 * Nothing is created per slot. Confined to one thread.
 *
 * <pre>
 *  slot --> clipped, gaps, frozen --> is it certain that no current flows? --> zero, noise
 *       \-> amps without volts, volts without amps, polarity
 * </pre>
 */
public final class SensorHealth {

  private static final HealthFault[] FAULTS = HealthFault.values();

  private final Reading reading;
  private final ClippedRule clipped;
  private final FrozenRule frozenCurrent = new FrozenRule();
  private final FrozenRule frozenVoltage = new FrozenRule();
  private final LostVoltageRule lostVoltage = new LostVoltageRule();
  private final LostCurrentRule lostCurrent = new LostCurrentRule();
  private final PolarityRule polarity;
  private final IdleWatch idle = new IdleWatch();
  private final ZeroRule zero;
  private final NoiseRule noise;
  private final GapRule gaps;

  /** By {@link HealthFault#ordinal}. */
  private final FaultState[] states = new FaultState[FAULTS.length];

  /**
   * A watch over one source that has seen nothing.
   *
   * @param scale counts to amps and volts
   * @param pairsPerSecond rate of the source
   * @param lowestCount lowest count its converter can give
   * @param highestCount highest count, likewise
   */
  public SensorHealth(PairScale scale, int pairsPerSecond, int lowestCount, int highestCount) {
    reading = new Reading(scale);
    clipped = new ClippedRule(scale, lowestCount, highestCount);
    polarity = new PolarityRule(scale);
    zero = new ZeroRule(scale);
    noise = new NoiseRule(scale, pairsPerSecond);
    gaps = new GapRule(pairsPerSecond);
    for (HealthFault fault : FAULTS) {
      states[fault.ordinal()] = stateOf(fault);
    }
  }

  private FaultState stateOf(HealthFault fault) {
    return switch (fault) {
      case CLIPPED -> clipped.fault;
      case FROZEN_CURRENT -> frozenCurrent.fault;
      case FROZEN_VOLTAGE -> frozenVoltage.fault;
      case AMPS_WITHOUT_VOLTS -> lostVoltage.fault;
      case VOLTS_WITHOUT_AMPS -> lostCurrent.fault;
      case WRONG_POLARITY -> polarity.wrong;
      case SENSORS_DISAGREE -> polarity.disagree;
      case ZERO_DRIFT -> zero.fault;
      case NOISE -> noise.fault;
      case GAPS -> gaps.fault;
      case SAMPLE_RATE, CLOCK_DRIFT -> new FaultState(1);
    };
  }

  /**
   * Takes the next slot.
   *
   * @param slot with {@link #currentOffsetCounts} taken off, as far as they were known
   * @param arc what the slots up to this one make of the arc
   * @param flowing true if this slot carried current
   * @param asked what the procedure asks for, or null if there is none
   */
  public void accept(Slot slot, ArcState arc, boolean flowing, Polarity asked) {
    gaps.accept(slot);
    if (slot.isMissing()) {
      return;
    }
    reading.fill(slot, arc, flowing, asked);
    clipped.accept(reading);
    acceptStill();
    idle.accept(reading, clipped.isVoltageAtLimit(), frozenVoltage.stillSlots());
    zero.accept(reading, idle);
    noise.accept(reading, idle);
    lostVoltage.accept(reading, zero.fault.isActive() || idle.isImpossibleCurrent());
    lostCurrent.accept(reading);
    polarity.accept(reading);
  }

  private void acceptStill() {
    frozenCurrent.accept(
        reading,
        reading.sums.lowestCurrentCount(),
        reading.sums.highestCurrentCount(),
        clipped.isCurrentAtLimit());
    frozenVoltage.accept(
        reading,
        reading.sums.lowestVoltageCount(),
        reading.sums.highestVoltageCount(),
        clipped.isVoltageAtLimit());
  }

  /** The active faults, one bit each: the bit of a fault is its {@link HealthFault#ordinal}. */
  public int activeBits() {
    int bits = 0;
    for (int k = 0; k < states.length; k++) {
      bits |= states[k].isActive() ? 1 << k : 0;
    }
    return bits;
  }

  /** True while this fault is active. */
  public boolean isActive(HealthFault fault) {
    return states[fault.ordinal()].isActive();
  }

  /** First slot of a fault that is or was active. */
  public long onsetSlot(HealthFault fault) {
    return states[fault.ordinal()].onsetSlot();
  }

  /** First slot after the last in which a fault was seen. */
  public long endSlot(HealthFault fault) {
    return states[fault.ordinal()].endSlot();
  }

  /** True if it was certain of the last slot that no current flowed: zero and noise are judged. */
  public boolean isQuiet() {
    return idle.isQuiet();
  }

  /** Counts to take off every current count from the next slot on: where the clamp's zero is. */
  public int currentOffsetCounts() {
    return zero.offsetCounts();
  }

  /** True once the clamp's zero was seen and is where {@link #currentOffsetCounts} puts it. */
  public boolean isZeroKnown() {
    return zero.isKnown();
  }
}
