package org.boothlamp.monitor;

import static org.junit.jupiter.api.Assertions.assertAll;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.LongPredicate;
import java.util.stream.Stream;
import org.boothlamp.judging.Signal;
import org.boothlamp.signal.ChannelScale;
import org.boothlamp.signal.PairScale;
import org.boothlamp.testing.FaultInjector;
import org.boothlamp.testing.KnownRecording;
import org.boothlamp.testing.KnownRecording.Truth;
import org.boothlamp.testing.PairScript;
import org.boothlamp.testing.PipelineRun;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.FieldSource;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Every fault of the sensors that shows in the pairs, put into every recording: its own name, the
 * lamp in fault within half a second of the first moment at which it can be seen, and nothing
 * judged from then on. When that is, each case says. Three faults show only under a condition: the
 * clamp's zero and noise while no current flows, and a clamp that was never around the lead once
 * the arc's volts go up and down, which those of a steady TIG arc do not; such an arc is no
 * segment, and the lamp stays idle.
 */
class FaultInjectionTest {

  private static final double MOST_SECONDS = 0.5;
  private static final double SLOT = 0.01;
  private static final double IDLE_QUIET_SECONDS = 0.5;

  private static final List<String> RECORDINGS = KnownRecording.NAMES;

  /** Nobody writes to the counts of a recording. */
  private static final Map<String, KnownRecording> LOADED = new HashMap<>();

  /** A recording with a fault in it. */
  private record Injected(
      PairScale scale, List<PairScript.Part> parts, double visibleSeconds, double endSeconds) {}

  /** Puts a fault into a recording. */
  private interface Injection {
    Injected into(Bench bench);
  }

  private record Fault(EventKind kind, String severity, Injection injection) {}

  /** A sound recording and the moments at which something can be done to it. */
  private record Bench(KnownRecording recording) {

    int rate() {
      return recording.pairsPerSecond();
    }

    double ampsPerCount() {
      return recording.scale().current().unitsPerCount();
    }

    double voltsPerCount() {
      return recording.scale().voltage().unitsPerCount();
    }

    Truth longest() {
      Truth longest = recording.segments().get(0);
      for (Truth segment : recording.segments()) {
        longest = length(segment) > length(longest) ? segment : longest;
      }
      return longest;
    }

    private static double length(Truth segment) {
      return segment.endSeconds() - segment.startSeconds();
    }

    /** Half a second and more of arc before it, if there is as much, and after it. */
    double midArc() {
      return longest().startSeconds() + 0.4 * length(longest());
    }

    /** Half a second after the last current, the machine without open-circuit volts. */
    double idle() {
      int dead = 0;
      for (int k = 0; k < recording.current().length; k++) {
        boolean none =
            Math.abs(recording.voltage()[k] * voltsPerCount()) < 1
                && Math.abs(recording.current()[k] * ampsPerCount()) < 8;
        dead = none ? dead + 1 : 0;
        if (dead > 0.7 * rate()) {
          return (double) k / rate();
        }
      }
      throw new AssertionError("never idle: " + recording.name());
    }

    int pair(double seconds) {
      return (int) Math.round(seconds * rate());
    }

    short[] current() {
      return recording.current();
    }

    short[] voltage() {
      return recording.voltage();
    }

    double ampsAt(double seconds, double spanSeconds) {
      double sum = 0;
      for (int k = pair(seconds); k < pair(seconds + spanSeconds); k++) {
        sum += Math.abs(current()[k]) * ampsPerCount();
      }
      return sum / (pair(seconds + spanSeconds) - pair(seconds));
    }

    Injected changed(short[] current, short[] voltage, double visible) {
      return changed(recording.scale(), current, voltage, visible, Double.POSITIVE_INFINITY);
    }

    Injected changed(
        PairScale scale, short[] current, short[] voltage, double visible, double end) {
      return new Injected(scale, List.of(new PairScript.Part(0, current, voltage)), visible, end);
    }
  }

  private static final List<Fault> FAULTS = faults();

  private static List<Fault> faults() {
    List<Fault> faults = new ArrayList<>();
    addClipped(faults);
    addFrozen(faults);
    addLostSensors(faults);
    addTurned(faults);
    addZeroDrift(faults);
    addNoise(faults);
    addGaps(faults);
    return faults;
  }

  /** Visible once a twentieth of the pairs of a tenth of a second are at the limit. */
  private static void addClipped(List<Fault> faults) {
    for (double share : new double[] {0.9, 0.6, 0.3}) {
      faults.add(
          new Fault(
              EventKind.CLIPPED, "current at " + share, bench -> clippedCurrent(bench, share)));
      faults.add(
          new Fault(
              EventKind.CLIPPED, "voltage at " + share, bench -> clippedVoltage(bench, share)));
    }
    faults.add(
        new Fault(
            EventKind.CLIPPED,
            "current torn to the limit",
            bench ->
                bench.changed(
                    toTheLimit(bench.current(), bench), bench.voltage(), bench.midArc())));
    faults.add(
        new Fault(
            EventKind.CLIPPED,
            "voltage torn to the limit",
            bench ->
                bench.changed(
                    bench.current(), toTheLimit(bench.voltage(), bench), bench.midArc())));
  }

  private static short[] toTheLimit(short[] counts, Bench bench) {
    return FaultInjector.stuck(counts, bench.pair(bench.midArc()), counts.length, Short.MAX_VALUE);
  }

  private static Injected clippedCurrent(Bench bench, double share) {
    double gain = Short.MAX_VALUE * bench.ampsPerCount() / (share * bench.longest().meanAmps());
    short[] current = FaultInjector.amplified(bench.current(), gain);
    PairScale scale =
        new PairScale(
            new ChannelScale(bench.ampsPerCount() / gain, 0), bench.recording().scale().voltage());
    return clipped(bench, scale, current, bench.voltage(), firstClipped(current, bench));
  }

  private static Injected clippedVoltage(Bench bench, double share) {
    double gain = Short.MAX_VALUE * bench.voltsPerCount() / (share * bench.longest().meanVolts());
    short[] voltage = FaultInjector.amplified(bench.voltage(), gain);
    PairScale scale =
        new PairScale(
            bench.recording().scale().current(), new ChannelScale(bench.voltsPerCount() / gain, 0));
    return clipped(bench, scale, bench.current(), voltage, firstClipped(voltage, bench));
  }

  /** Only the run in which it shows first: a colder one may stay inside the range. */
  private static Injected clipped(
      Bench bench, PairScale scale, short[] current, short[] voltage, double visible) {
    for (Truth segment : bench.recording().segments()) {
      if (segment.endSeconds() > visible) {
        return bench.changed(scale, current, voltage, visible, segment.endSeconds());
      }
    }
    throw new AssertionError("nothing is welded after " + visible + " s");
  }

  private static double firstClipped(short[] counts, Bench bench) {
    int window = bench.rate() / 10;
    int clipped = 0;
    for (int k = 0; k < counts.length; k++) {
      clipped += isAtLimit(counts[k]) ? 1 : 0;
      clipped -= k >= window && isAtLimit(counts[k - window]) ? 1 : 0;
      if (clipped >= 0.05 * window) {
        return (double) k / bench.rate();
      }
    }
    throw new AssertionError("nothing is clipped");
  }

  private static boolean isAtLimit(short count) {
    return count == Short.MAX_VALUE || count == Short.MIN_VALUE;
  }

  /** Visible at once, while current flows. */
  private static void addFrozen(List<Fault> faults) {
    for (double seconds : new double[] {0.45, 0.8, 1_000}) {
      faults.add(
          new Fault(
              EventKind.FROZEN_CURRENT, "for " + seconds, bench -> frozenCurrent(bench, seconds)));
      faults.add(
          new Fault(
              EventKind.FROZEN_VOLTAGE, "for " + seconds, bench -> frozenVoltage(bench, seconds)));
    }
  }

  private static Injected frozenCurrent(Bench bench, double seconds) {
    double at = bench.midArc();
    int until = bench.pair(at + seconds);
    short[] current = FaultInjector.frozen(bench.current(), bench.pair(at), until);
    return bench.changed(bench.recording().scale(), current, bench.voltage(), at, at + seconds);
  }

  private static Injected frozenVoltage(Bench bench, double seconds) {
    double at = bench.midArc();
    int until = bench.pair(at + seconds);
    short[] voltage = FaultInjector.frozen(bench.voltage(), bench.pair(at), until);
    return bench.changed(bench.recording().scale(), bench.current(), voltage, at, at + seconds);
  }

  /** A tap off is visible while current flows, a clamp off while an arc burns. */
  private static void addLostSensors(List<Fault> faults) {
    for (double share : new double[] {0, 0.005, 0.01}) {
      for (double noise : new double[] {0, 0.1, 0.3}) {
        faults.add(
            new Fault(
                EventKind.AMPS_WITHOUT_VOLTS,
                "share " + share + ", noise " + noise + " V",
                bench -> tapOff(bench, bench.midArc(), share, noise)));
      }
      faults.add(
          new Fault(
              EventKind.VOLTS_WITHOUT_AMPS,
              "share " + share,
              bench -> clampOff(bench, bench.midArc(), share)));
    }
    faults.add(
        new Fault(
            EventKind.AMPS_WITHOUT_VOLTS,
            "before the arc",
            bench -> {
              Injected injected = tapOff(bench, 0, 0.005, 0.1);
              double start = bench.recording().segments().get(0).startSeconds();
              return new Injected(
                  injected.scale(), injected.parts(), start + 0.02, Double.POSITIVE_INFINITY);
            }));
  }

  private static Injected tapOff(Bench bench, double at, double share, double noiseVolts) {
    double noise = noiseVolts / bench.voltsPerCount();
    return bench.changed(
        bench.current(), FaultInjector.faded(bench.voltage(), bench.pair(at), share, noise), at);
  }

  private static Injected clampOff(Bench bench, double at, double share) {
    double noise = 0.8 / bench.ampsPerCount();
    return bench.changed(
        FaultInjector.faded(bench.current(), bench.pair(at), share, noise), bench.voltage(), at);
  }

  /** Visible while an arc burns. */
  private static void addTurned(List<Fault> faults) {
    faults.add(
        new Fault(
            EventKind.WRONG_POLARITY,
            "leads swapped inside a run",
            bench -> swapped(bench, bench.midArc(), 1)));
    faults.add(
        new Fault(
            EventKind.WRONG_POLARITY,
            "alternating, three tenths the other way",
            bench -> swapped(bench, bench.midArc(), 0.3)));
    faults.add(
        new Fault(
            EventKind.WRONG_POLARITY,
            "leads swapped from the start",
            bench ->
                new Injected(
                    bench.recording().scale(),
                    swapped(bench, 0, 1).parts(),
                    bench.recording().segments().get(0).startSeconds(),
                    Double.POSITIVE_INFINITY)));
    faults.add(
        new Fault(
            EventKind.SENSORS_DISAGREE,
            "clamp turned round",
            bench ->
                bench.changed(
                    turned(bench.current(), bench, bench.midArc(), 1),
                    bench.voltage(),
                    bench.midArc())));
    faults.add(
        new Fault(
            EventKind.SENSORS_DISAGREE,
            "taps swapped",
            bench ->
                bench.changed(
                    bench.current(),
                    turned(bench.voltage(), bench, bench.midArc(), 1),
                    bench.midArc())));
  }

  private static Injected swapped(Bench bench, double at, double share) {
    return bench.changed(
        turned(bench.current(), bench, at, share), turned(bench.voltage(), bench, at, share), at);
  }

  private static short[] turned(short[] counts, Bench bench, double at, double share) {
    int period = bench.rate() / 50;
    return FaultInjector.turned(counts, k -> k >= bench.pair(at) && k % period < share * period);
  }

  /** Visible half a second after the last current, and not at all while an arc burns. */
  private static void addZeroDrift(List<Fault> faults) {
    for (double amps : new double[] {4, -4, 6, 8, -8}) {
      faults.add(
          new Fault(
              EventKind.ZERO_DRIFT,
              amps + " A at idle",
              bench -> drifted(bench, bench.idle(), amps, bench.idle())));
    }
    for (double amps : new double[] {4, -6, 8, 11}) {
      faults.add(
          new Fault(
              EventKind.ZERO_DRIFT,
              amps + " A inside a run",
              bench -> drifted(bench, bench.midArc(), amps, seenAfterTheRun(bench, amps))));
    }
  }

  /** A drift above arc-off keeps the current from ever going off, and shows at once. */
  private static double seenAfterTheRun(Bench bench, double amps) {
    return bench.longest().endSeconds() + (amps > 9 ? 0.02 : IDLE_QUIET_SECONDS);
  }

  private static Injected drifted(Bench bench, double at, double amps, double visible) {
    double counts = amps / bench.ampsPerCount();
    return bench.changed(
        FaultInjector.added(bench.current(), bench.pair(at), k -> counts),
        bench.voltage(),
        visible);
  }

  /** Visible half a second after the last current, without an arc's volts. */
  private static void addNoise(List<Fault> faults) {
    for (double amps : new double[] {4, 8, 12}) {
      faults.add(
          new Fault(
              EventKind.NOISE,
              "current, " + amps + " A",
              bench ->
                  bench.changed(
                      FaultInjector.noisy(
                          bench.current(), bench.pair(bench.idle()), amps / bench.ampsPerCount()),
                      bench.voltage(),
                      bench.idle())));
    }
    for (double volts : new double[] {1.5, 3}) {
      faults.add(
          new Fault(
              EventKind.NOISE,
              "voltage, " + volts + " V",
              bench ->
                  bench.changed(
                      bench.current(),
                      FaultInjector.noisy(
                          bench.voltage(), bench.pair(bench.idle()), volts / bench.voltsPerCount()),
                      bench.idle())));
    }
    for (double hertz : new double[] {50, 60, 150}) {
      for (double amps : new double[] {6, 12}) {
        faults.add(
            new Fault(
                EventKind.NOISE,
                "hum of " + hertz + " Hz, peak " + amps + " A",
                bench -> hum(bench, hertz, amps)));
      }
    }
  }

  private static Injected hum(Bench bench, double hertz, double peakAmps) {
    double peak = peakAmps / bench.ampsPerCount();
    double turn = 2 * Math.PI * hertz / bench.rate();
    return bench.changed(
        FaultInjector.added(
            bench.current(), bench.pair(bench.idle()), k -> peak * Math.sin(turn * k + 1)),
        bench.voltage(),
        bench.idle());
  }

  /** Visible at once. */
  private static void addGaps(List<Fault> faults) {
    faults.add(
        new Fault(EventKind.GAPS, "every eighth pair", bench -> gaps(bench, k -> k % 8 == 3)));
    faults.add(
        new Fault(EventKind.GAPS, "every other pair", bench -> gaps(bench, k -> k % 2 == 0)));
    faults.add(
        new Fault(
            EventKind.GAPS, "every fifth frame of 100", bench -> gaps(bench, k -> k % 500 < 100)));
    faults.add(
        new Fault(
            EventKind.GAPS, "80 ms in half a second", bench -> gaps(bench, k -> k % 2_500 < 400)));
  }

  private static Injected gaps(Bench bench, LongPredicate lost) {
    int from = bench.pair(bench.midArc());
    return new Injected(
        bench.recording().scale(),
        FaultInjector.without(
            bench.current(), bench.voltage(), k -> k >= from && lost.test(k - from)),
        bench.midArc(),
        Double.POSITIVE_INFINITY);
  }

  private static Stream<Arguments> everyFaultInEveryRecording() {
    return RECORDINGS.stream()
        .flatMap(
            name ->
                FAULTS.stream()
                    .map(fault -> Arguments.of(name, fault.kind(), fault.severity(), fault)));
  }

  @ParameterizedTest(name = "{0}: {1}, {2}")
  @MethodSource("everyFaultInEveryRecording")
  void shouldNameTheFaultWithinHalfASecondAndJudgeNothingGreen(
      String name, EventKind kind, String severity, Fault fault) {
    KnownRecording recording = LOADED.computeIfAbsent(name, KnownRecording::load);
    Injected injected = fault.injection().into(new Bench(recording));
    PipelineRun run = play(recording, injected);
    List<LogEntry> began = run.entries().of(LogEntry.Kind.EVENT_STARTED);
    assertFalse(began.isEmpty(), "no fault was found");
    assertEquals(kind, began.get(0).event);
    double found = firstFault(run);
    double visible = injected.visibleSeconds();
    assertAll(
        () -> assertTrue(found <= visible + MOST_SECONDS, (found - visible) + " s late"),
        () -> assertTrue(began.get(0).startSeconds >= visible - 0.2, "begins before it is there"),
        () -> assertTrue(began.get(0).startSeconds <= found, "begins after it is found"),
        () -> assertNothingShownAsJudged(run, found, injected.endSeconds()),
        () -> assertNothingJudgedSince(run, visible, injected.endSeconds()));
  }

  private static PipelineRun play(KnownRecording recording, Injected injected) {
    PipelineRun run =
        new PipelineRun(injected.scale(), recording.pairsPerSecond(), recording.plan());
    for (PairScript.Part part : injected.parts()) {
      run.send(part.current(), part.voltage(), part.firstIndex());
    }
    run.pipeline().close(SegmentEnd.STOPPED);
    return run;
  }

  private static double firstFault(PipelineRun run) {
    for (PipelineRun.Shown shown : run.shown()) {
      if (shown.signal() == Signal.FAULT) {
        return shown.seconds();
      }
    }
    throw new AssertionError("the lamp never was in fault");
  }

  private static void assertNothingShownAsJudged(PipelineRun run, double from, double until) {
    Set<Signal> judged = Set.of(Signal.GREEN, Signal.AMBER, Signal.RED);
    for (PipelineRun.Shown shown : run.shown()) {
      if (shown.seconds() >= from && shown.seconds() < until) {
        assertFalse(
            judged.contains(shown.signal()), shown.signal() + " at " + shown.seconds() + " s");
      }
    }
  }

  /** The first second of a segment is not judged by anybody. */
  private static void assertNothingJudgedSince(PipelineRun run, double since, double until) {
    for (LogEntry segment : run.entries().of(LogEntry.Kind.SEGMENT_ENDED)) {
      SegmentFigures figures = segment.figures;
      double end = figures.startSeconds + figures.lengthSeconds;
      if (end > since && figures.startSeconds < until && end <= until + 2 * SLOT) {
        double judged = figures.greenSeconds + figures.amberSeconds + figures.redSeconds;
        double sound = Math.max(0, since - figures.startSeconds - 1);
        assertTrue(
            judged <= sound + SLOT + 1e-9,
            judged + " s judged of the run at " + figures.startSeconds + " s, sound: " + sound);
      }
    }
  }

  @ParameterizedTest
  @FieldSource("RECORDINGS")
  void shouldFindNoFaultInASoundRecording(String name) {
    PipelineRun run = PipelineRun.of(KnownRecording.load(name));
    assertEquals(List.of(), run.entries().of(LogEntry.Kind.EVENT_STARTED));
    assertTrue(run.shown().stream().noneMatch(shown -> shown.signal() == Signal.FAULT));
  }
}
