package org.boothlamp.monitor;

import java.util.concurrent.atomic.AtomicReference;
import org.boothlamp.judging.JudgingPlan;
import org.boothlamp.judging.Signal;
import org.boothlamp.signal.PairSums;
import org.boothlamp.signal.Polarity;
import org.boothlamp.signal.Slot;

/**
 * The one step that the booth lives by: read pairs, find arcs, judge them, show the lamp, tell the
 * log.
 *
 * <pre>
 *   SampleSource --read--> Monitor --accept--> Pipeline
 *                             |                   |
 *                             |&lt;----- signal -----+
 *                             |&lt;----- entries ----+
 *                             v
 *                    Lamp.show, BoothLogSink.offer
 * </pre>
 *
 * <p>Runs on the thread "sampler" and never waits for anything but the source. No sample for 0.25 s
 * is a fault; after 2 s of silence an open segment is closed. Once pairs flow nothing is created.
 * {@link #assign}, {@link #measureBy}, {@link #status} and {@link #live} may be called from any
 * thread.
 */
public final class Monitor implements Worker {

  /** Silence of the source from which the lamp is in fault. */
  public static final long SILENCE_FAULT_NANOS = 250_000_000L;

  /** Silence after which an open segment is closed rather than kept waiting. */
  public static final long SILENCE_END_NANOS = 2_000_000_000L;

  private final SampleSource source;
  private final Lamp lamp;
  private final BoothLogSink sink;
  private final WallClock wallClock;

  private final SampleBlock block = new SampleBlock();
  private final LogEntry event = new LogEntry();
  private final MonitorStatus status = new MonitorStatus();
  private final LiveFeed live = new LiveFeed();
  private final AtomicReference<Orders> orders;
  private final CounterWatch badFrames = new CounterWatch(EventKind.BAD_FRAMES);
  private final CounterWatch lostPairs = new CounterWatch(EventKind.LOST_PAIRS);
  private final CounterWatch reconnects = new CounterWatch(EventKind.RECONNECTED);

  private final MonitorFault wrongRate = new MonitorFault(EventKind.SAMPLE_RATE);
  private final MonitorFault clockDrift = new MonitorFault(EventKind.CLOCK_DRIFT);

  private PipelineSettings settings;
  private PairTap tap = PairTap.NONE;
  private SourceFormat format;
  private RateWatch rateWatch;
  private Pipeline pipeline;
  private boolean started;
  private long firstNanos;
  private long lastPairsNanos;
  private boolean silent;
  private boolean silenceEnded;
  private long lostEntries;
  private boolean closed;

  /**
   * A monitor that has not read yet. It closes neither the source nor the lamp: their owner does.
   *
   * @param first who welds at the start
   */
  public Monitor(
      SampleSource source,
      Lamp lamp,
      BoothLogSink sink,
      WallClock wallClock,
      PipelineSettings settings,
      Assignment first) {
    this.source = source;
    this.lamp = lamp;
    this.sink = sink;
    this.wallClock = wallClock;
    this.settings = settings;
    orders = new AtomicReference<>(new Orders(settings, first));
  }

  /** Lets somebody listen in; before the first step. */
  public void setTap(PairTap listener) {
    tap = listener;
  }

  /** Judges by another assignment from the next contact on. */
  public void assign(Assignment next) {
    orders.updateAndGet(now -> new Orders(now.settings(), next));
  }

  /**
   * Measures by another scale, and judges by the assignment that was made for it, as soon as no arc
   * burns; both together, never one without the other.
   */
  public void measureBy(PipelineSettings next, Assignment assignment) {
    orders.updateAndGet(
        now -> new Orders(next.equals(now.settings()) ? now.settings() : next, assignment));
  }

  /** What was assigned last, by whoever did. */
  public Assignment assigned() {
    return orders.get().assignment();
  }

  /** What the monitor sees now. */
  public MonitorStatus status() {
    return status;
  }

  /** The same, all of one step, with the last trace points. */
  public LiveFeed live() {
    return live;
  }

  @Override
  public String roleName() {
    return "sampler";
  }

  @Override
  public boolean step() {
    SampleSource.Outcome outcome = source.read(block);
    if (!started) {
      started = true;
      firstNanos = block.monotonicNanos;
      lastPairsNanos = block.monotonicNanos;
    }
    switch (outcome) {
      case PAIRS -> takePairs();
      case NOTHING -> watchSilence();
      case END -> {
        return false;
      }
    }
    watchCounters();
    lamp.show(signal(), block.monotonicNanos);
    showStatus();
    return true;
  }

  private void takePairs() {
    if (source.format() != format) {
      changeFormat();
    }
    if (silent) {
      silent = false;
      tellSilence(LogEntry.Kind.EVENT_ENDED, (block.monotonicNanos - lastPairsNanos) / 1e9);
    }
    lastPairsNanos = block.monotonicNanos;
    followOrders();
    watchRate();
    tap.onPairs(block, format);
    pipeline.accept(block, wallClock.epochMillis());
  }

  private void followOrders() {
    Orders now = orders.get();
    if (now.settings() != settings) {
      if (!pipeline.isOff()) {
        return;
      }
      settings = now.settings();
      pipeline.close(SegmentEnd.ARC_OFF);
      pipeline = new Pipeline(settings, format, new Receiver());
    }
    pipeline.assign(now.assignment());
  }

  private void changeFormat() {
    if (pipeline != null) {
      pipeline.close(SegmentEnd.GAP);
      endRateFaults();
      fillEvent(EventKind.FORMAT_CHANGED, block.monotonicNanos);
      event.count = source.format().pairsPerSecond();
      offerEvent();
    }
    format = source.format();
    pipeline = new Pipeline(settings, format, new Receiver());
    rateWatch = new RateWatch(format.pairsPerSecond());
  }

  private void watchRate() {
    rateWatch.accept(block);
    wrongRate.set(rateWatch.isWrongRate(), rateWatch.sinceNanos());
    clockDrift.set(rateWatch.isDrifting(), rateWatch.sinceNanos());
    if (wrongRate.active || clockDrift.active) {
      pipeline.beginOutsideFault(rateWatch.sinceIndex());
    } else {
      pipeline.endOutsideFault();
    }
  }

  private void endRateFaults() {
    wrongRate.set(false, 0);
    clockDrift.set(false, 0);
  }

  private void watchSilence() {
    long silentNanos = block.monotonicNanos - lastPairsNanos;
    if (!silent && silentNanos >= SILENCE_FAULT_NANOS) {
      silent = true;
      silenceEnded = false;
      tellSilence(LogEntry.Kind.EVENT_STARTED, 0);
    }
    if (silent && !silenceEnded && silentNanos >= SILENCE_END_NANOS) {
      silenceEnded = true;
      if (pipeline != null) {
        pipeline.finish(SegmentEnd.GAP);
      }
    }
  }

  private void tellSilence(LogEntry.Kind kind, double lengthSeconds) {
    fillEvent(EventKind.NO_SAMPLES, lastPairsNanos);
    event.kind = kind;
    event.lengthSeconds = lengthSeconds;
    offerEvent();
  }

  private void watchCounters() {
    SourceCounters counters = source.counters();
    watch(badFrames, counters.badFrames);
    watch(lostPairs, counters.lostPairs);
    watch(reconnects, counters.reconnects);
  }

  private void watch(CounterWatch watch, long count) {
    if (watch.look(count, block.monotonicNanos, event)) {
      offerEvent();
    }
  }

  private void fillEvent(EventKind kind, long nanos) {
    event.kind = LogEntry.Kind.EVENT_ENDED;
    event.event = kind;
    event.monotonicNanos = nanos;
    event.lengthSeconds = 0;
    event.count = 0;
  }

  private void offerEvent() {
    event.startSeconds = (event.monotonicNanos - firstNanos) / 1e9;
    event.wallMillis =
        wallClock.epochMillis() - (block.monotonicNanos - event.monotonicNanos) / 1_000_000;
    offer(event);
  }

  private void offer(LogEntry entry) {
    if (!sink.offer(entry)) {
      lostEntries++;
      status.setLostEntries(lostEntries);
    }
  }

  private Signal signal() {
    if (silent) {
      return Signal.FAULT;
    }
    return pipeline == null ? Signal.DARK : pipeline.signal();
  }

  private void showStatus() {
    if (pipeline == null) {
      status.set(signal(), Double.NaN, Double.NaN, 0, 0, orders.get().assignment());
      live.set(signal(), Double.NaN, Double.NaN, 0, false, orders.get().assignment());
      return;
    }
    PairSums average = pipeline.average();
    boolean arc = pipeline.isArc();
    status.set(
        signal(),
        arc ? average.meanAbsoluteAmps(settings.scale()) : Double.NaN,
        arc ? average.meanAbsoluteVolts(settings.scale()) : Double.NaN,
        pipeline.arcSeconds(),
        pipeline.slots() * Slot.SECONDS,
        pipeline.assignment());
    Polarity polarity = polarity();
    live.set(
        signal(),
        arc ? LiveFeed.amps(average, settings.scale(), polarity) : Double.NaN,
        arc ? LiveFeed.volts(average, settings.scale(), polarity) : Double.NaN,
        pipeline.arcSeconds(),
        arc,
        pipeline.assignment());
  }

  /** What the procedure asks for; null if none is loaded. */
  private Polarity polarity() {
    JudgingPlan plan = pipeline.assignment().plan();
    return plan == null ? null : plan.procedure().current();
  }

  private void followLive(LogEntry entry) {
    if (entry.kind == LogEntry.Kind.SEGMENT_STARTED) {
      live.beginRun();
    } else if (entry.kind == LogEntry.Kind.TRACE_POINT) {
      live.addPoint(entry, settings.scale(), pipeline.average(), polarity());
    }
  }

  /** Closes what is open in the log; a second call does nothing. */
  @Override
  public void close() {
    if (closed) {
      return;
    }
    closed = true;
    if (pipeline != null) {
      pipeline.close(SegmentEnd.STOPPED);
    }
    endRateFaults();
    finish(badFrames);
    finish(lostPairs);
    finish(reconnects);
    if (silent) {
      tellSilence(LogEntry.Kind.EVENT_ENDED, (block.monotonicNanos - lastPairsNanos) / 1e9);
    }
  }

  private void finish(CounterWatch watch) {
    if (watch.finish(event)) {
      offerEvent();
    }
  }

  /** What to measure and to judge by; the settings object is another only if the scale is. */
  private record Orders(PipelineSettings settings, Assignment assignment) {}

  /** A fault that takes a clock to see. */
  private final class MonitorFault {
    private final EventKind kind;
    private boolean active;
    private long startNanos;

    MonitorFault(EventKind kind) {
      this.kind = kind;
    }

    void set(boolean next, long onsetNanos) {
      if (next != active) {
        active = next;
        startNanos = active ? onsetNanos : startNanos;
        fillEvent(kind, startNanos);
        event.kind = active ? LogEntry.Kind.EVENT_STARTED : LogEntry.Kind.EVENT_ENDED;
        event.lengthSeconds = active ? 0 : (block.monotonicNanos - startNanos) / 1e9;
        offerEvent();
      }
    }
  }

  /** Passes on what the pipeline finds; a fault of the monitor beats every signal. */
  private final class Receiver implements Pipeline.Listener {

    @Override
    public void onSignal(Signal signal, long monotonicNanos) {
      if (!silent) {
        lamp.show(signal, monotonicNanos);
      }
    }

    @Override
    public void onEntry(LogEntry entry) {
      offer(entry);
      tap.onEntry(entry);
      followLive(entry);
    }
  }
}
