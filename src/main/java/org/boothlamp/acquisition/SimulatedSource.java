package org.boothlamp.acquisition;

import java.util.concurrent.locks.LockSupport;
import java.util.function.LongConsumer;
import org.boothlamp.monitor.NanoClock;
import org.boothlamp.monitor.SampleBlock;
import org.boothlamp.monitor.SampleSource;
import org.boothlamp.monitor.SourceCounters;
import org.boothlamp.monitor.SourceFormat;
import org.boothlamp.signal.PairScale;

/**
 * A booth that exists only as arithmetic: welding circuits, electrodes that melt, and trainees who
 * make mistakes, all from one seed. Invented data, for trying things out; never to be shown as
 * measured. Confined to the sampler's thread.
 */
public final class SimulatedSource implements SampleSource {

  private final SimulatedPlay play;
  private final SimulatedPacer pacer;
  private final SourceFormat format;
  private final SourceCounters counters = new SourceCounters();
  private long nextIndex;
  private boolean closed;

  /**
   * A source.
   *
   * @param booth what happens
   * @param sensor how it is measured
   * @param speed 1 in real time, n for n times that, 0 as fast as it is read
   * @param clock used for real time only
   * @param listener told of each run before it begins
   */
  public SimulatedSource(
      SimulatedBooth booth,
      SimulatedSensor sensor,
      double speed,
      NanoClock clock,
      SimulatedRunListener listener) {
    this(
        new SimulatedPlay(booth, sensor, listener, SimulatedPlay.LONGEST_STEP_SECONDS),
        sensor,
        speed,
        clock,
        LockSupport::parkNanos);
  }

  SimulatedSource(
      SimulatedPlay play,
      SimulatedSensor sensor,
      double speed,
      NanoClock clock,
      LongConsumer waitNanos) {
    this.play = play;
    format = sensor.format();
    pacer = new SimulatedPacer(sensor.pairsPerSecond(), speed, clock, waitNanos);
  }

  /** A source that plays a script as fast as it is read. */
  public static SimulatedSource of(
      SimulatedBooth booth, SimulatedSensor sensor, SimulatedRunListener listener) {
    return new SimulatedSource(booth, sensor, 0, NanoClock.SYSTEM, listener);
  }

  /** The endless booth of the settings. */
  public static SimulatedSource endless(
      SimulatedSettings settings, PairScale scale, NanoClock clock) {
    return new SimulatedSource(
        settings.booth(),
        SimulatedSensor.of(scale).atRate(settings.pairsPerSecond()),
        settings.speed(),
        clock,
        SimulatedRunListener.NONE);
  }

  @Override
  public Outcome read(SampleBlock block) {
    block.count = 0;
    block.firstIndex = nextIndex;
    Outcome outcome = closed ? Outcome.END : fill(block, pacer.due(nextIndex));
    nextIndex += block.count;
    block.monotonicNanos = pacer.nanosAfter(nextIndex);
    return outcome;
  }

  /** Fills the block up to the end of a run at most. */
  private Outcome fill(SampleBlock block, int due) {
    if (due == 0) {
      return Outcome.NOTHING;
    }
    if (play.isBetweenRuns() && !play.beginNextRun()) {
      return Outcome.END;
    }
    int wanted = Math.min(due, SampleBlock.CAPACITY);
    while (block.count < wanted && !play.isBetweenRuns()) {
      play.nextPair(block.current, block.voltage, block.count);
      block.count++;
    }
    return Outcome.PAIRS;
  }

  @Override
  public SourceFormat format() {
    return format;
  }

  @Override
  public SourceCounters counters() {
    return counters;
  }

  /** Index of the run that the last pair belongs to, from 0; -1 before the first read. */
  public int currentRun() {
    return play.runIndex();
  }

  /** What really happened so far. */
  public SimulatedTruth truth() {
    return play.truth();
  }

  @Override
  public void close() {
    closed = true;
  }
}
