package org.boothlamp.cli;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import org.boothlamp.arc.ArcDetector;
import org.boothlamp.arc.ArcRule;
import org.boothlamp.health.HealthFault;
import org.boothlamp.health.SensorHealth;
import org.boothlamp.monitor.NanoClock;
import org.boothlamp.monitor.RateWatch;
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
  private static final long LISTEN_NANOS = 1_000_000_000L;

  /** A source that takes pairs itself knows after 3 s whether it holds its rate. */
  private static final long MEASURED_LISTEN_NANOS = 4_000_000_000L;

  private final SampleSource source;
  private final NanoClock clock;
  private final SampleBlock block = new SampleBlock();
  private final PairSums sums = new PairSums();
  private final Set<HealthFault> faults = EnumSet.noneOf(HealthFault.class);
  private ArcDetector detector;
  private SensorHealth health;
  private long pairs;

  SourceProbe(SampleSource source, NanoClock clock) {
    this.source = source;
    this.clock = clock;
  }

  /**
   * Waits up to 3 s for the first pair, then listens for a second; for 4 s if the source measures
   * how evenly it takes pairs.
   */
  List<Finding> listen(PairScale scale) {
    if (!waitForPairs()) {
      return List.of(nothing());
    }
    SourceFormat format = source.format();
    detector = new ArcDetector(scale, ArcRule.STANDARD);
    health =
        new SensorHealth(
            scale, format.pairsPerSecond(), format.lowestCount(), format.highestCount());
    RateWatch rate = new RateWatch(format.pairsPerSecond());
    SlotBuilder builder =
        new SlotBuilder(
            source.format().pairsPerSecond(), scale, new ShortCircuitRule(8, 9), this::add);
    long start = clock.nanoTime();
    SampleSource.Outcome outcome = SampleSource.Outcome.PAIRS;
    while (outcome != SampleSource.Outcome.END && clock.nanoTime() - start < listenNanos()) {
      if (outcome == SampleSource.Outcome.PAIRS) {
        rate.accept(block);
        note(HealthFault.SAMPLE_RATE, rate.isWrongRate());
        builder.accept(block.current, block.voltage, block.count, block.firstIndex);
        pairs += block.count;
      }
      outcome = source.read(block);
    }
    List<Finding> findings = new ArrayList<>();
    findings.add(heard(scale));
    addHealth(findings);
    return findings;
  }

  private long listenNanos() {
    return source.measuresRate() ? MEASURED_LISTEN_NANOS : LISTEN_NANOS;
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

  private void addHealth(List<Finding> findings) {
    for (HealthFault fault : faults) {
      findings.add(Finding.bad("sensors", fault.word() + ": " + fault.meaning(), fault.nextMove()));
    }
    if (faults.isEmpty()) {
      findings.add(Finding.good("sensors", "no fault in this while"));
    }
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

  private void note(HealthFault fault, boolean active) {
    if (active) {
      faults.add(fault);
    }
  }

  private void add(Slot slot) {
    sums.add(slot.sums());
    detector.accept(slot);
    health.accept(slot, detector.state(), detector.slotHasCurrent(), null);
    for (HealthFault fault : HealthFault.values()) {
      note(fault, health.isActive(fault));
    }
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
