package org.boothlamp.monitor;

import java.util.ArrayList;
import java.util.List;
import java.util.function.LongPredicate;
import org.boothlamp.monitor.FaultBench.Injected;
import org.boothlamp.signal.ChannelScale;
import org.boothlamp.signal.PairScale;
import org.boothlamp.testing.FaultInjector;
import org.boothlamp.testing.KnownRecording.Truth;

/** The table of faults that are put into the recordings, and when each can be seen. */
final class InjectedFaults {

  private static final double IDLE_QUIET_SECONDS = 0.5;

  /** Puts a fault into a recording. */
  interface Injection {
    Injected into(FaultBench bench);
  }

  /** A fault at one severity. */
  record Fault(EventKind kind, String severity, Injection injection) {}

  /** Every fault at several severities. */
  static final List<Fault> ALL = faults();

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

  private static short[] toTheLimit(short[] counts, FaultBench bench) {
    return FaultInjector.stuck(counts, bench.pair(bench.midArc()), counts.length, Short.MAX_VALUE);
  }

  private static Injected clippedCurrent(FaultBench bench, double share) {
    double gain = Short.MAX_VALUE * bench.ampsPerCount() / (share * bench.longest().meanAmps());
    short[] current = FaultInjector.amplified(bench.current(), gain);
    PairScale scale =
        new PairScale(
            new ChannelScale(bench.ampsPerCount() / gain, 0), bench.recording().scale().voltage());
    return clipped(bench, scale, current, bench.voltage(), firstClipped(current, bench));
  }

  private static Injected clippedVoltage(FaultBench bench, double share) {
    double gain = Short.MAX_VALUE * bench.voltsPerCount() / (share * bench.longest().meanVolts());
    short[] voltage = FaultInjector.amplified(bench.voltage(), gain);
    PairScale scale =
        new PairScale(
            bench.recording().scale().current(), new ChannelScale(bench.voltsPerCount() / gain, 0));
    return clipped(bench, scale, bench.current(), voltage, firstClipped(voltage, bench));
  }

  /** Only the run in which it shows first: a colder one may stay inside the range. */
  private static Injected clipped(
      FaultBench bench, PairScale scale, short[] current, short[] voltage, double visible) {
    for (Truth segment : bench.recording().segments()) {
      if (segment.endSeconds() > visible) {
        return bench.changed(scale, current, voltage, visible, segment.endSeconds());
      }
    }
    throw new AssertionError("nothing is welded after " + visible + " s");
  }

  private static double firstClipped(short[] counts, FaultBench bench) {
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

  private static Injected frozenCurrent(FaultBench bench, double seconds) {
    double at = bench.midArc();
    int until = bench.pair(at + seconds);
    short[] current = FaultInjector.frozen(bench.current(), bench.pair(at), until);
    return bench.changed(bench.recording().scale(), current, bench.voltage(), at, at + seconds);
  }

  private static Injected frozenVoltage(FaultBench bench, double seconds) {
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

  private static Injected tapOff(FaultBench bench, double at, double share, double noiseVolts) {
    double noise = noiseVolts / bench.voltsPerCount();
    return bench.changed(
        bench.current(), FaultInjector.faded(bench.voltage(), bench.pair(at), share, noise), at);
  }

  private static Injected clampOff(FaultBench bench, double at, double share) {
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
    faults.add(
        new Fault(
            EventKind.SENSORS_DISAGREE,
            "clamp turned round, and reads a fifth",
            bench -> turnedAndWeak(bench, bench.midArc())));
  }

  private static Injected turnedAndWeak(FaultBench bench, double at) {
    short[] weak = FaultInjector.amplified(bench.current(), 0.2);
    short[] current = bench.current().clone();
    int from = bench.pair(at);
    System.arraycopy(weak, from, current, from, current.length - from);
    return bench.changed(turned(current, bench, at, 1), bench.voltage(), at);
  }

  private static Injected swapped(FaultBench bench, double at, double share) {
    return bench.changed(
        turned(bench.current(), bench, at, share), turned(bench.voltage(), bench, at, share), at);
  }

  private static short[] turned(short[] counts, FaultBench bench, double at, double share) {
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
  private static double seenAfterTheRun(FaultBench bench, double amps) {
    return bench.longest().endSeconds() + (amps > 9 ? 0.02 : IDLE_QUIET_SECONDS);
  }

  private static Injected drifted(FaultBench bench, double at, double amps, double visible) {
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

  private static Injected hum(FaultBench bench, double hertz, double peakAmps) {
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

  private static Injected gaps(FaultBench bench, LongPredicate lost) {
    int from = bench.pair(bench.midArc());
    return new Injected(
        bench.recording().scale(),
        FaultInjector.without(
            bench.current(), bench.voltage(), k -> k >= from && lost.test(k - from)),
        bench.midArc(),
        Double.POSITIVE_INFINITY);
  }

  private InjectedFaults() {}
}
