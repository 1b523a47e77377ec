package org.boothlamp.cli;

import org.boothlamp.acquisition.MeterPoller;
import org.boothlamp.calibration.AveragingWindow;
import org.boothlamp.calibration.Channel;
import org.boothlamp.calibration.StabilityRule;
import org.boothlamp.calibration.StabilityRule.Stability;
import org.boothlamp.calibration.WindowFigures;
import org.boothlamp.monitor.SampleBlock;
import org.boothlamp.monitor.SampleSource;
import org.boothlamp.monitor.SourceFormat;
import org.boothlamp.signal.ChannelScale;

/**
 * One channel of a source, and the reference meter if there is one, averaged over the last ten
 * seconds. Time is the source's own. Confined to one thread.
 */
final class SteadySensor {

  /** Fewer readings of the meter make no average. */
  static final int LEAST_METER_READINGS = 5;

  private static final double NANOS_PER_SECOND = 1e9;
  private static final double LONGEST_SILENCE_SECONDS = 5;

  private final SampleSource source;
  private final MeterPoller meter;
  private final Channel channel;
  private final ChannelScale nominal;
  private final StabilityRule rule;
  private final SampleBlock block = new SampleBlock();
  private SourceFormat format;
  private AveragingWindow window;
  private int lastCount;
  private long gapsBefore;
  private boolean begun;
  private long firstNanos;
  private double silentSince;

  /**
   * A sensor that was not read yet.
   *
   * @param meter null if a person reads the meter
   * @param nominal counts to amps or volts by the data sheet
   * @param fullScale in amps or volts
   */
  SteadySensor(
      SampleSource source,
      MeterPoller meter,
      Channel channel,
      ChannelScale nominal,
      double fullScale) {
    this.source = source;
    this.meter = meter;
    this.channel = channel;
    this.nominal = nominal;
    rule = new StabilityRule(fullScale / Math.abs(nominal.unitsPerCount()));
  }

  /** Reads what has come; waits for it up to 50 ms. */
  void step() {
    SampleSource.Outcome outcome = source.read(block);
    if (!begun) {
      begun = true;
      firstNanos = block.monotonicNanos;
    }
    if (outcome == SampleSource.Outcome.END) {
      throw new CommandFailedException(
          "the source ended before the point was taken; calibrate with a source that goes on, or"
              + " with a longer recording");
    }
    if (outcome == SampleSource.Outcome.PAIRS) {
      take();
    }
    refuseSilence();
    takeMeter();
  }

  private void take() {
    if (!source.format().equals(format)) {
      format = source.format();
      gapsBefore += window == null ? 0 : window.gaps() + 1;
      window =
          new AveragingWindow(format.pairsPerSecond(), format.lowestCount(), format.highestCount());
    }
    short[] counts = channel == Channel.CURRENT ? block.current : block.voltage;
    window.accept(counts, block.count, block.firstIndex);
    lastCount = counts[block.count - 1];
    silentSince = seconds();
  }

  private void refuseSilence() {
    if (seconds() - silentSince > LONGEST_SILENCE_SECONDS) {
      String trouble = source.trouble();
      throw new CommandFailedException(
          trouble != null
              ? trouble
              : "no samples for 5 s; see that the front end is powered and set to the same line speed");
    }
  }

  private void takeMeter() {
    if (meter == null) {
      return;
    }
    Double reading = meter.poll();
    while (reading != null) {
      if (window != null) {
        window.acceptReference(reading);
      }
      reading = meter.poll();
    }
    if (meter.failure() != null) {
      throw meter.failure();
    }
  }

  /** Forgets what was averaged: another level is set. */
  void clear() {
    while (meter != null && meter.poll() != null) {
      // a reading of the old level
    }
    if (window != null) {
      window.clear();
    }
  }

  /** Seconds of the source's time since the first read. */
  double seconds() {
    return (block.monotonicNanos - firstNanos) / NANOS_PER_SECOND;
  }

  /** What the window holds; null before the first pair. */
  WindowFigures figures() {
    return window == null ? null : window.figures();
  }

  Stability stability(WindowFigures figures) {
    return rule.judge(figures);
  }

  double driftLimit(WindowFigures figures) {
    return rule.driftLimit(figures);
  }

  /** True if the level is stable, and the meter was read often enough meanwhile. */
  boolean isReady(WindowFigures figures) {
    return figures != null && stability(figures) == Stability.STABLE && hasReference(figures);
  }

  boolean hasReference(WindowFigures figures) {
    return meter == null || figures.reference().readings() >= LEAST_METER_READINGS;
  }

  boolean readsMeter() {
    return meter != null;
  }

  /** By the nominal scale, in amps or volts. */
  double nominalOf(WindowFigures figures) {
    return nominal.toUnits(figures.mean());
  }

  int lastCount() {
    return lastCount;
  }

  /** Times the averaging began anew because pairs were missing. */
  long gaps() {
    return gapsBefore + (window == null ? 0 : window.gaps());
  }

  Channel channel() {
    return channel;
  }

  ChannelScale nominal() {
    return nominal;
  }
}
