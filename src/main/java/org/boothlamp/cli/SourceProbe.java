package org.boothlamp.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.boothlamp.judging.JudgingPlan;
import org.boothlamp.monitor.NanoClock;
import org.boothlamp.monitor.SampleBlock;
import org.boothlamp.monitor.SampleSource;
import org.boothlamp.monitor.SourceFormat;
import org.boothlamp.signal.PairScale;
import org.boothlamp.signal.PairSums;
import org.boothlamp.signal.ShortCircuitRule;
import org.boothlamp.signal.Slot;
import org.boothlamp.signal.SlotBuilder;

/**
 * Listens to a source for a short while and says what it delivers: device, rate, level and noise of
 * both channels, and whether the sensors can be believed. Confined to one thread.
 */
final class SourceProbe {

  private static final long LONGEST_WAIT_NANOS = 3_000_000_000L;

  /** A source that takes pairs itself knows after 3 s whether it holds its rate. */
  private static final double MEASURED_SECONDS = 4;

  private final SampleSource source;
  private final NanoClock clock;
  private final List<JudgingPlan> plans;
  private final double listenSeconds;
  private final SampleBlock block = new SampleBlock();
  private final PairSums sums = new PairSums();
  private HeardSensors sensors;
  private long pairs;

  /**
   * A probe of a source.
   *
   * @param plans the passes that can be judged
   * @param listenSeconds how long to listen, by the source's own time
   */
  SourceProbe(SampleSource source, NanoClock clock, List<JudgingPlan> plans, double listenSeconds) {
    this.source = source;
    this.clock = clock;
    this.plans = plans;
    this.listenSeconds = listenSeconds;
  }

  /**
   * Waits up to 3 s for the first pair, then listens; for 4 s at least if the source measures how
   * evenly it takes pairs.
   */
  List<Finding> listen(PairScale scale) {
    if (!waitForPairs()) {
      return List.of(nothing());
    }
    SourceFormat format = source.format();
    sensors = new HeardSensors(scale, format);
    SlotBuilder builder =
        new SlotBuilder(format.pairsPerSecond(), scale, new ShortCircuitRule(8, 9), this::add);
    long start = block.monotonicNanos;
    SampleSource.Outcome outcome = SampleSource.Outcome.PAIRS;
    double seconds =
        source.measuresRate() ? Math.max(MEASURED_SECONDS, listenSeconds) : listenSeconds;
    while (outcome != SampleSource.Outcome.END && secondsSince(start) < seconds) {
      if (outcome == SampleSource.Outcome.PAIRS) {
        sensors.accept(block);
        builder.accept(block.current, block.voltage, block.count, block.firstIndex);
        pairs += block.count;
      }
      outcome = source.read(block);
    }
    List<Finding> findings = new ArrayList<>();
    findings.add(heard(scale));
    findings.addAll(new SensorFindings(sensors, plans, seconds).list());
    return findings;
  }

  private double secondsSince(long startNanos) {
    return (block.monotonicNanos - startNanos) / 1e9;
  }

  private Finding heard(PairScale scale) {
    String performance = source.performance();
    String limits = source.limits();
    String detail =
        describe(scale)
            + (limits.isEmpty() ? "" : "; " + limits)
            + (performance == null ? "" : "; " + performance);
    String trouble = source.trouble();
    return trouble == null
        ? Finding.good("source", detail)
        : Finding.note("source", detail, trouble);
  }

  private Finding nothing() {
    if (source.trouble() != null) {
      return Finding.bad("source", source.trouble(), "");
    }
    long badFrames = source.counters().badFrames;
    return Finding.bad(
        "source",
        "no samples within 3 s" + (badFrames > 0 ? ", but " + badFrames + " damaged frames" : ""),
        "see that the front end is powered and set to the same line speed");
  }

  private boolean waitForPairs() {
    long start = clock.nanoTime();
    while (clock.nanoTime() - start < LONGEST_WAIT_NANOS) {
      SampleSource.Outcome outcome = source.read(block);
      if (outcome != SampleSource.Outcome.NOTHING) {
        return outcome == SampleSource.Outcome.PAIRS;
      }
    }
    return false;
  }

  private void add(Slot slot) {
    sums.add(slot.sums());
    sensors.accept(slot);
  }

  private String describe(PairScale scale) {
    int rate = source.format().pairsPerSecond();
    return String.format(
        Locale.ROOT,
        "%s, %d pairs/s, %d heard; current %.1f A (noise %.2f A), voltage %.2f V (noise %.2f V);"
            + " counts %d to %d reach %.0f A and %.0f V; short circuits %s",
        source.format().device(),
        rate,
        pairs,
        sums.meanAmps(scale),
        sums.standardDeviationAmps(scale),
        sums.meanVolts(scale),
        sums.standardDeviationVolts(scale),
        source.format().lowestCount(),
        source.format().highestCount(),
        Math.abs(scale.current().toUnits(source.format().highestCount())),
        Math.abs(scale.voltage().toUnits(source.format().highestCount())),
        ShortCircuitRule.isMeasurableAt(rate)
            ? "measured"
            : "not measured: they need "
                + ShortCircuitRule.LEAST_PAIRS_PER_SECOND
                + " pairs/s or more");
  }
}
