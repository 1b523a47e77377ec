package org.boothlamp.monitor;

import org.boothlamp.arc.ArcChange;
import org.boothlamp.arc.ArcDetector;
import org.boothlamp.arc.ArcRule;
import org.boothlamp.arc.SegmentTally;
import org.boothlamp.calibration.CalibrationNumbers;
import org.boothlamp.health.SensorHealth;
import org.boothlamp.judging.ExcursionTracker;
import org.boothlamp.judging.Judge;
import org.boothlamp.judging.Level;
import org.boothlamp.judging.Signal;
import org.boothlamp.procedure.Quantity;
import org.boothlamp.signal.PairScale;
import org.boothlamp.signal.PairSums;
import org.boothlamp.signal.Polarity;
import org.boothlamp.signal.ShortCircuitRule;
import org.boothlamp.signal.Slot;
import org.boothlamp.signal.SlotBuilder;

/**
 * The path from counts to signal for one source format.
 *
 * <pre>
 *                                         SegmentTally, TransferTally
 *  pairs -> SlotBuilder -> ArcDetector -> JudgedTime, TraceReducer ------------> log entries
 *                 ^            |
 *                 |            +-------> Judge ----------------------------------> signal
 *                 |            v                                                    ^
 *                 +-- zero -- SensorHealth -- faults ------------------------------+
 * </pre>
 *
 * <p>Nothing is created per pair or per slot. Confined to the sampler's thread.
 */
public final class Pipeline {

  /** Takes what the pipeline finds, on the sampler's thread; must not wait. */
  public interface Listener {

    /** The signal changed; {@code monotonicNanos} is the end of the slot that changed it. */
    void onSignal(Signal signal, long monotonicNanos);

    /** Something for the log; the entry is valid only during the call. */
    void onEntry(LogEntry entry);
  }

  /** So fine that the log can save close to every 2 s and no later: a power cut takes no more. */
  private static final int PROGRESS_SLOTS = Slot.PER_SECOND / 10;

  private final PairScale scale;
  private final CalibrationNumbers calibrations;
  private final int pairsPerSecond;
  private final ArcRule standardRule;
  private final SlotTimes times;
  private final Listener listener;
  private final SlotBuilder builder;
  private final ArcDetector detector;
  private final SensorHealth health;
  private final FaultEvents faultEvents;
  private final SegmentTally tally = new SegmentTally();
  private final TransferTally transfer;
  private final JudgedTime judgedTime = new JudgedTime();
  private final Judge judge;
  private final TraceReducer trace;
  private final LogEntry entry = new LogEntry();

  private Assignment assignment = Assignment.NONE;
  private Assignment nextAssignment = Assignment.NONE;
  private Signal signal = Signal.IDLE;
  private long missingPairs;
  private long missingPairsWaiting;
  private boolean faulty;
  private boolean outsideFault;
  private boolean contactInDoubt;
  private long trustedUntilSlot = Long.MAX_VALUE;

  /** Slot now worked on. */
  private long slotNumber = -1;

  /** A pipeline that has seen nothing. */
  public Pipeline(PipelineSettings settings, SourceFormat format, Listener listener) {
    this.scale = settings.scale();
    this.calibrations = settings.calibrations();
    this.pairsPerSecond = format.pairsPerSecond();
    this.standardRule = settings.arc();
    times = new SlotTimes(pairsPerSecond);
    this.listener = listener;
    transfer = new TransferTally(scale, pairsPerSecond);
    detector = new ArcDetector(scale, standardRule);
    judge = new Judge(settings.judging(), scale, pairsPerSecond, this::onExcursion);
    trace = new TraceReducer(standardRule.bridgeSlots(), this::onTracePoint);
    health = new SensorHealth(scale, pairsPerSecond, format.lowestCount(), format.highestCount());
    faultEvents = new FaultEvents(health, new FaultLog());
    builder = new SlotBuilder(pairsPerSecond, scale, shortRule(standardRule), this::onSlot);
  }

  /** Judges by another assignment from the next contact on. */
  public void assign(Assignment next) {
    nextAssignment = next;
  }

  /** Takes the pairs of a block; {@code wallMillis} is the time of day at its end. */
  public void accept(SampleBlock block, long wallMillis) {
    times.follow(block, wallMillis);
    builder.accept(block.current, block.voltage, block.count, block.firstIndex);
  }

  /**
   * Ends an open segment or contact, because the source has fallen silent or ended.
   *
   * @param why what to write down as the segment's end
   */
  public void finish(SegmentEnd why) {
    ArcChange change = detector.finish();
    if (change == ArcChange.SEGMENT_ENDED) {
      endSegment(why);
    } else if (change == ArcChange.TOUCH_ENDED) {
      endTouch();
    }
    setSignal(faulty ? Signal.FAULT : Signal.IDLE);
  }

  /** Ends everything that is open, faults of the sensors too: no more pairs will come. */
  public void close(SegmentEnd why) {
    finish(why);
    faultEvents.finish();
  }

  /**
   * Tells of a fault that only the monitor can see, because it takes a clock; holds from the next
   * slot on. While it lasts a second call changes nothing.
   *
   * @param sincePair index of the pair with which it began; what was judged since is taken back
   */
  void beginOutsideFault(long sincePair) {
    if (!outsideFault) {
      outsideFault = true;
      long slot = sincePair * Slot.PER_SECOND / pairsPerSecond;
      judgedTime.recall(slotNumber + 1 - slot);
      trustedUntilSlot = Math.min(trustedUntilSlot, slot);
    }
  }

  /** It is over. */
  void endOutsideFault() {
    outsideFault = false;
  }

  private void onSlot(Slot slot) {
    slotNumber = slot.number();
    takeNextAssignment();
    ArcChange change = detector.accept(slot);
    watchHealth(slot);
    switch (change) {
      case CONTACT_BEGAN -> beginContact(slot);
      case TOUCH_ENDED -> endTouch();
      case SEGMENT_ENDED -> endSegment(detector.endedInGap() ? SegmentEnd.GAP : SegmentEnd.ARC_OFF);
      case NONE, ARC_CONFIRMED -> holdContact(slot);
    }
    setSignal(signalNow());
  }

  private void watchHealth(Slot slot) {
    health.accept(slot, detector.state(), detector.slotHasCurrent(), askedPolarity());
    builder.setCurrentOffset(health.currentOffsetCounts());
    setFaulty(faultEvents.look() | outsideFault);
  }

  private Polarity askedPolarity() {
    return assignment.plan() == null ? null : assignment.plan().procedure().current();
  }

  private void doubtSince(long slot) {
    judgedTime.recall(slotNumber - slot);
    trustedUntilSlot = Math.min(trustedUntilSlot, slot);
  }

  /** Excursions end with the trust in the sensors; once that is back the average begins anew. */
  private void setFaulty(boolean next) {
    contactInDoubt |= next;
    if (next != faulty) {
      faulty = next;
      judge.end(Math.min(trustedUntilSlot, slotNumber));
      judge.begin(next ? null : assignment.plan(), slotNumber);
    }
    trustedUntilSlot = Long.MAX_VALUE;
  }

  private void takeNextAssignment() {
    if (nextAssignment != assignment && detector.isOff()) {
      assignment = nextAssignment;
      ArcRule rule = ruleFor(assignment);
      detector.setRule(rule);
      builder.setRule(shortRule(rule));
    }
  }

  private ArcRule ruleFor(Assignment assignment) {
    return assignment.plan() == null
        ? standardRule
        : standardRule.withArcOnAmps(assignment.plan().procedure().arcOnAmps());
  }

  private static ShortCircuitRule shortRule(ArcRule rule) {
    return new ShortCircuitRule(rule.shortCircuitVolts(), rule.arcOffAmps());
  }

  private void beginContact(Slot slot) {
    tally.clear();
    transfer.clear();
    judgedTime.clear();
    trace.clear();
    missingPairs = 0;
    missingPairsWaiting = 0;
    contactInDoubt = faulty;
    judge.begin(faulty ? null : assignment.plan(), slot.number());
    stamp(LogEntry.Kind.SEGMENT_STARTED, slot.number());
    entry.assignment = assignment;
    entry.scale = scale;
    entry.calibrations = calibrations;
    entry.zeroSeen = health.isZeroKnown();
    entry.currentOffsetCounts = health.currentOffsetCounts();
    entry.pairsPerSecond = pairsPerSecond;
    listener.onEntry(entry);
    addArcOn(slot);
  }

  private void holdContact(Slot slot) {
    if (detector.isOff()) {
      return;
    }
    if (detector.slotHasCurrent()) {
      addArcOn(slot);
    } else {
      addArcOff(slot);
    }
    if (detector.isArc() && (slot.number() + 1 - detector.startSlot()) % PROGRESS_SLOTS == 0) {
      sendProgress();
    }
  }

  private void addArcOn(Slot slot) {
    judgedTime.addArcOn(slotSignal(slot));
    missingPairs += missingPairsWaiting + slot.missingPairs();
    missingPairsWaiting = 0;
    tally.addArcOn(slot);
    transfer.addArcOn(slot);
    trace.addArcOn(slot.sums());
    judge.addArcOn(slot.sums(), slot.number());
  }

  private void addArcOff(Slot slot) {
    judgedTime.addArcOff(slotSignal(slot));
    missingPairsWaiting += slot.missingPairs();
    tally.addArcOff();
    trace.addArcOff(slot.sums());
    judge.addArcOff(slot.number());
  }

  /** What the averages said when this slot began: that is what its time is counted to. */
  private Signal slotSignal(Slot slot) {
    if (slot.isMissing() || faulty) {
      return Signal.FAULT;
    }
    Level level = judge.level();
    return level == null ? Signal.SETTLING : Signal.of(level);
  }

  private Signal signalNow() {
    if (faulty) {
      return Signal.FAULT;
    }
    if (!detector.isArc()) {
      return Signal.IDLE;
    }
    Level shown = judge.shown();
    return shown == null ? Signal.SETTLING : Signal.of(shown);
  }

  private void setSignal(Signal next) {
    if (next != signal) {
      signal = next;
      listener.onSignal(next, times.nanosAt(slotNumber + 1));
    }
  }

  private void endTouch() {
    send(LogEntry.Kind.SEGMENT_DROPPED, detector.endSlot());
    stamp(LogEntry.Kind.TOUCH, detector.startSlot());
    entry.lengthSeconds = detector.lengthSlots() * Slot.SECONDS;
    entry.assignment = assignment;
    entry.stuck = detector.isStuck() && !contactInDoubt;
    listener.onEntry(entry);
  }

  private void endSegment(SegmentEnd why) {
    judge.end(detector.endSlot());
    trace.end();
    stamp(LogEntry.Kind.SEGMENT_ENDED, detector.startSlot());
    fillFigures(entry.figures);
    entry.assignment = assignment;
    entry.end = why;
    listener.onEntry(entry);
  }

  private void sendProgress() {
    stamp(LogEntry.Kind.SEGMENT_PROGRESS, detector.startSlot());
    fillFigures(entry.figures);
    listener.onEntry(entry);
  }

  private void fillFigures(SegmentFigures figures) {
    figures.startSeconds = detector.startSlot() * Slot.SECONDS;
    figures.lengthSeconds = detector.lengthSlots() * Slot.SECONDS;
    figures.arcOuts = detector.arcOuts();
    figures.takeMeasured(tally, scale, pairsPerSecond);
    transfer.fill(figures);
    figures.takeJudged(judgedTime);
    figures.missingSeconds = (double) missingPairs / pairsPerSecond;
  }

  private void onExcursion(Quantity quantity, ExcursionTracker excursion) {
    stamp(LogEntry.Kind.EXCURSION, excursion.startSlot());
    entry.quantity = quantity;
    entry.side = excursion.side();
    entry.lengthSeconds = (excursion.endSlot() - excursion.startSlot()) * Slot.SECONDS;
    entry.worst = excursion.worst();
    listener.onEntry(entry);
  }

  private void onTracePoint(PairSums point) {
    stamp(LogEntry.Kind.TRACE_POINT, slotNumber);
    entry.setCounts(point);
    entry.signalCode = (byte) signal.code();
    listener.onEntry(entry);
  }

  private void send(LogEntry.Kind kind, long slot) {
    stamp(kind, slot);
    listener.onEntry(entry);
  }

  /** Fills in what an entry is and when the thing it tells began. */
  private void stamp(LogEntry.Kind kind, long slot) {
    entry.kind = kind;
    entry.startSeconds = slot * Slot.SECONDS;
    entry.monotonicNanos = times.nanosAt(slot);
    entry.wallMillis = times.wallMillisAt(slot);
  }

  /** What the lamp is to show. */
  public Signal signal() {
    return signal;
  }

  /** True from the confirmation of an arc to the end of its segment. */
  public boolean isArc() {
    return detector.isArc();
  }

  /** True while there is neither a contact nor an arc. */
  public boolean isOff() {
    return detector.isOff();
  }

  /** Length of the running segment so far, s; 0 if none runs. */
  public double arcSeconds() {
    return detector.isArc() ? detector.lengthSlots() * Slot.SECONDS : 0;
  }

  /** Trailing average of the running segment; no pairs while none runs. */
  public PairSums average() {
    return judge.average();
  }

  /** Who welds now. */
  public Assignment assignment() {
    return assignment;
  }

  /** Slots seen since the source's first pair. */
  public long slots() {
    return slotNumber + 1;
  }

  /** Writes down the faults of the sensors; what was judged since they began is taken back. */
  private final class FaultLog implements FaultEvents.Listener {

    @Override
    public void onFaultBegan(EventKind kind, long onsetSlot) {
      doubtSince(onsetSlot);
      stamp(LogEntry.Kind.EVENT_STARTED, onsetSlot);
      entry.event = kind;
      listener.onEntry(entry);
    }

    @Override
    public void onFaultEnded(EventKind kind, long onsetSlot, long endSlot) {
      stamp(LogEntry.Kind.EVENT_ENDED, onsetSlot);
      entry.event = kind;
      entry.lengthSeconds = (endSlot - onsetSlot) * Slot.SECONDS;
      entry.count = 0;
      listener.onEntry(entry);
    }
  }
}
