package org.boothlamp.cli;

import java.util.EnumSet;
import java.util.Set;
import org.boothlamp.arc.ArcDetector;
import org.boothlamp.arc.ArcRule;
import org.boothlamp.arc.ArcState;
import org.boothlamp.health.HealthFault;
import org.boothlamp.health.SensorHealth;
import org.boothlamp.monitor.RateWatch;
import org.boothlamp.monitor.SampleBlock;
import org.boothlamp.monitor.SourceFormat;
import org.boothlamp.signal.PairScale;
import org.boothlamp.signal.PairSums;
import org.boothlamp.signal.Polarity;
import org.boothlamp.signal.Slot;

/**
 * What was heard of the sensors: their faults, and what happened that faults could have shown by.
 * Confined to one thread.
 */
final class HeardSensors {

  /** The slowest rule looks at 0.5 s. */
  private static final int LONG_ENOUGH_SLOTS = Slot.PER_SECOND / 2;

  /** Longer than any rule wants in a row. */
  private static final int ENOUGH_SLOTS = Slot.PER_SECOND / 2;

  private static final HealthFault[] FAULTS = HealthFault.values();

  private final PairScale scale;
  private final ArcDetector detector;
  private final SensorHealth health;
  private final RateWatch rate;
  private final Set<HealthFault> seen = EnumSet.noneOf(HealthFault.class);
  private final PairSums arc = new PairSums();
  private int slots;
  private int arcSlots;
  private final Spell current = new Spell();
  private final Spell quiet = new Spell();

  /** The longest run of slots in which something was so. */
  private static final class Spell {
    private int now;
    private int longest;

    void add(boolean so) {
      now = so ? now + 1 : 0;
      longest = Math.max(longest, now);
    }
  }

  HeardSensors(PairScale scale, SourceFormat format) {
    this.scale = scale;
    detector = new ArcDetector(scale, ArcRule.STANDARD);
    health =
        new SensorHealth(
            scale, format.pairsPerSecond(), format.lowestCount(), format.highestCount());
    rate = new RateWatch(format.pairsPerSecond());
  }

  /** Takes a block, before its slots. */
  void accept(SampleBlock block) {
    rate.accept(block);
    note(HealthFault.SAMPLE_RATE, rate.isWrongRate());
    note(HealthFault.CLOCK_DRIFT, rate.isDrifting());
  }

  /** Takes a slot. */
  void accept(Slot slot) {
    detector.accept(slot);
    boolean flowing = detector.slotHasCurrent();
    health.accept(slot, detector.state(), flowing, null);
    for (HealthFault fault : FAULTS) {
      note(fault, health.isActive(fault));
    }
    slots++;
    current.add(flowing && detector.state() != ArcState.OFF);
    quiet.add(health.isQuiet());
    if (flowing && detector.state() == ArcState.ARC) {
      arc.add(slot.sums());
      arcSlots++;
    }
  }

  private void note(HealthFault fault, boolean active) {
    if (active) {
      seen.add(fault);
    }
  }

  boolean isSeen(HealthFault fault) {
    return seen.contains(fault);
  }

  boolean isLongEnough() {
    return slots >= LONG_ENOUGH_SLOTS;
  }

  boolean hadCurrent() {
    return current.longest >= ENOUGH_SLOTS;
  }

  boolean hadArc() {
    return arcSlots >= ENOUGH_SLOTS;
  }

  boolean wasQuiet() {
    return quiet.longest >= ENOUGH_SLOTS;
  }

  /** The smallest deviation of the rate that could have been told; not a number if none. */
  double tellableShare() {
    return rate.tellableShare();
  }

  /** Direction of the current while an arc burned; meaningless if none did. */
  Polarity polarity() {
    return Polarity.of(arc.meanAmps(scale), arc.meanAbsoluteAmps(scale));
  }
}
