package org.boothlamp.arc;

import org.boothlamp.signal.PairScale;
import org.boothlamp.signal.PairSums;
import org.boothlamp.signal.Slot;

/**
 * Finds arc-on segments, arc-outs, touches and stuck electrodes, slot by slot.
 *
 * <pre>
 *          current on            as many slots at arc volts as confirm it
 *   OFF ----------------> CONTACT -----------------------------------------> ARC --+
 *    ^                       | current off: a touch                           |    | off for less
 *    |&lt;----------------------+                                                |    | than a bridge
 *    |                                                                        |&lt;---+
 *    +&lt;-----------------------------------------------------------------------+
 *           off for longer than the bridge: a segment, or a touch if it was too short
 * </pre>
 *
 * <p>Start and end are whole slots. Whether a contact is at short-circuit volts is judged on the
 * slots between its first and its last, since those two may hold the open-circuit volts for part of
 * their time. A single slot at arc volts confirms nothing: an electrode that is torn loose draws an
 * arc for one or two. Nothing is created per slot. Confined to one thread.
 */
public final class ArcDetector {

  private final PairScale scale;
  private ArcRule rule;

  private ArcState state = ArcState.OFF;
  private long startSlot;

  /** First slot after the last one that carried current. */
  private long endSlot;

  /** Slots of the contact at arc volts, without its first and its last. */
  private int arcVoltsSlots;

  private boolean lastSlotAtArcVolts;
  private int offSlots;
  private boolean seenOffInBridge;
  private boolean seenMissingInBridge;
  private int arcOuts;
  private boolean slotHasCurrent;

  /** A detector for pairs of one scale. */
  public ArcDetector(PairScale scale, ArcRule rule) {
    this.scale = scale;
    this.rule = rule;
  }

  /** Another rule from the next segment on; call it only while {@link #isOff}. */
  public void setRule(ArcRule rule) {
    this.rule = rule;
  }

  /** Takes the next slot and says what it changed. */
  public ArcChange accept(Slot slot) {
    PairSums sums = slot.sums();
    double amps = slot.isMissing() ? 0 : sums.meanAbsoluteAmps(scale);
    slotHasCurrent = amps >= (state == ArcState.OFF ? rule.arcOnAmps() : rule.arcOffAmps());
    return switch (state) {
      case OFF -> slotHasCurrent ? beginContact(slot) : ArcChange.NONE;
      case CONTACT -> slotHasCurrent ? holdContact(slot) : endTouch();
      case ARC -> slotHasCurrent ? holdArc(slot) : bridge(slot);
    };
  }

  private ArcChange beginContact(Slot slot) {
    state = ArcState.CONTACT;
    startSlot = slot.number();
    endSlot = startSlot + 1;
    arcVoltsSlots = 0;
    lastSlotAtArcVolts = false;
    arcOuts = 0;
    return ArcChange.CONTACT_BEGAN;
  }

  private ArcChange holdContact(Slot slot) {
    hold(slot);
    arcVoltsSlots += lastSlotAtArcVolts ? 1 : 0;
    lastSlotAtArcVolts = isAtArcVolts(slot);
    if (arcVoltsSlots < rule.confirmSlots()) {
      return ArcChange.NONE;
    }
    state = ArcState.ARC;
    offSlots = 0;
    return ArcChange.ARC_CONFIRMED;
  }

  private boolean isAtArcVolts(Slot slot) {
    return slot.sums().meanAbsoluteVolts(scale) >= rule.shortCircuitVolts();
  }

  private void hold(Slot slot) {
    endSlot = slot.number() + 1;
  }

  private ArcChange holdArc(Slot slot) {
    hold(slot);
    if (offSlots > 0 && seenOffInBridge) {
      arcOuts++;
    }
    offSlots = 0;
    return ArcChange.NONE;
  }

  private ArcChange bridge(Slot slot) {
    if (offSlots == 0) {
      seenOffInBridge = false;
      seenMissingInBridge = false;
    }
    offSlots++;
    seenOffInBridge |= !slot.isMissing();
    seenMissingInBridge |= slot.isMissing();
    return offSlots > rule.bridgeSlots() ? endArc() : ArcChange.NONE;
  }

  private ArcChange endTouch() {
    state = ArcState.OFF;
    return ArcChange.TOUCH_ENDED;
  }

  private ArcChange endArc() {
    state = ArcState.OFF;
    return lengthSlots() < rule.minSegmentSlots() ? ArcChange.TOUCH_ENDED : ArcChange.SEGMENT_ENDED;
  }

  /** Ends whatever is open, because no more slots will come. */
  public ArcChange finish() {
    slotHasCurrent = false;
    return switch (state) {
      case OFF -> ArcChange.NONE;
      case CONTACT -> endTouch();
      case ARC -> endArc();
    };
  }

  /** What the slots so far make of it. */
  public ArcState state() {
    return state;
  }

  /** True while no current flows and no bridge is being waited for. */
  public boolean isOff() {
    return state == ArcState.OFF;
  }

  /** True from the confirmation of an arc until its segment has ended, bridges inside. */
  public boolean isArc() {
    return state == ArcState.ARC;
  }

  /** True if the last slot accepted carried current. */
  public boolean slotHasCurrent() {
    return slotHasCurrent;
  }

  /** First slot of the contact or segment that is open, or else of the last one. */
  public long startSlot() {
    return startSlot;
  }

  /** First slot after its last slot with current. */
  public long endSlot() {
    return endSlot;
  }

  /** Length from first to last slot with current. */
  public long lengthSlots() {
    return endSlot - startSlot;
  }

  /** Interruptions of the current that were bridged; missing time alone is none. */
  public int arcOuts() {
    return arcOuts;
  }

  /** True if the last touch was at short-circuit volts for longer than 0.5 s. */
  public boolean isStuck() {
    return lengthSlots() - arcVoltsSlots > ArcRule.STUCK_SLOTS;
  }

  /** True if samples were missing when the last segment ended. */
  public boolean endedInGap() {
    return seenMissingInBridge;
  }
}
