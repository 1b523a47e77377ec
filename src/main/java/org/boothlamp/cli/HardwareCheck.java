package org.boothlamp.cli;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import org.boothlamp.judging.CautionBand;
import org.boothlamp.judging.JudgingPlan;
import org.boothlamp.judging.WindowReach;
import org.boothlamp.monitor.SourceFormat;
import org.boothlamp.procedure.Quantity;
import org.boothlamp.settings.CountRange;
import org.boothlamp.signal.ChannelReach;
import org.boothlamp.signal.ChannelScale;
import org.boothlamp.signal.PairScale;
import org.boothlamp.signal.ShortCircuitRule;

/**
 * Works out what the chosen clamp, divider and converter can tell apart and how far they reach, and
 * holds that against the procedures. Confined to one thread.
 */
final class HardwareCheck {

  /** Largest no-load voltage, DC peak: EN 60974-1, read in a secondary source. */
  static final double OPEN_CIRCUIT_VOLTS = 113;

  private static final int ASSUMED_COUNTS = 1 << 12;
  private static final String COARSE_MOVE =
      "take a converter of more bits or a sensor of smaller range: a caution band should hold "
          + WindowReach.LEAST_COUNTS_A_BAND
          + " counts or more";

  /** One window of one pass and the channel that measures it. */
  private record Case(JudgingPlan plan, WindowReach reach) {

    String words() {
      return plan.procedure().id()
          + " "
          + plan.pass().name()
          + ", "
          + Wording.window(reach.band().window());
    }
  }

  private final PairScale scale;
  private final List<JudgingPlan> plans;
  private final SourceFormat heard;
  private final CountRange stated;
  private final List<Finding> findings = new ArrayList<>();

  /**
   * A check of one booth.
   *
   * @param scale counts to amps and volts; null with a recording, which brings its own
   * @param plans the passes that can be judged
   * @param heard what the source said of its pairs; null if it was not heard
   * @param stated the counts that the settings state, for want of that; null if they do not
   */
  HardwareCheck(PairScale scale, List<JudgingPlan> plans, SourceFormat heard, CountRange stated) {
    this.scale = scale;
    this.plans = List.copyOf(plans);
    this.heard = heard;
    this.stated = stated;
  }

  /** The findings, current before voltage before short circuits. */
  List<Finding> findings() {
    findings.clear();
    if (scale == null) {
      findings.add(
          Finding.note(
              "hardware",
              "a recording has no hardware: the file beside it gives its scale",
              "look at a booth whose source is \"serial\""));
      return findings;
    }
    findings.add(counts());
    channel("current", Quantity.AMPS, reach(scale.current()));
    ChannelReach voltage = reach(scale.voltage());
    channel("voltage", Quantity.VOLTS, voltage);
    openCircuit(voltage);
    shortCircuits();
    return findings;
  }

  private Finding counts() {
    if (heard == null && stated != null) {
      return Finding.note(
          "hardware",
          String.format(
              Locale.ROOT,
              "the source was not heard: counts from %d to %d are taken, as the settings state",
              stated.lowest(),
              stated.highest()),
          "plug the front end in and stop a running monitor, then check again");
    }
    if (heard == null) {
      return Finding.note(
          "hardware",
          "the source was not heard: a 12-bit converter is taken",
          "plug the front end in and stop a running monitor, then check again; or state"
              + " lowest_count and highest_count in the settings of a serial source");
    }
    return Finding.good(
        "hardware",
        String.format(
            Locale.ROOT,
            "%s gives counts from %d to %d, as it says itself",
            heard.device(),
            heard.lowestCount(),
            heard.highestCount()));
  }

  private ChannelReach reach(ChannelScale channel) {
    if (heard != null) {
      return new ChannelReach(channel, heard.lowestCount(), heard.highestCount());
    }
    if (stated != null) {
      return new ChannelReach(channel, stated.lowest(), stated.highest());
    }
    int lowest = Math.abs(channel.zeroCount()) < ASSUMED_COUNTS / 4 ? -ASSUMED_COUNTS / 2 : 0;
    return new ChannelReach(channel, lowest, lowest + ASSUMED_COUNTS - 1);
  }

  private void channel(String part, Quantity quantity, ChannelReach reach) {
    findings.add(
        Finding.good(
            part,
            String.format(
                Locale.ROOT,
                "%s %s a count; %.1f to %.1f %s before it clips",
                Wording.number(reach.step()),
                quantity.unit(),
                reach.lowest(),
                reach.highest(),
                quantity.unit())));
    List<Case> cases = cases(quantity, reach);
    cases.stream()
        .min(Comparator.comparingDouble(c -> c.reach().countsABand()))
        .ifPresent(narrowest -> findings.add(resolution(part, narrowest)));
    cases.stream()
        .filter(c -> c.reach().isClipped())
        .forEach(c -> findings.add(clipped(part, c, quantity)));
  }

  private List<Case> cases(Quantity quantity, ChannelReach reach) {
    List<Case> cases = new ArrayList<>();
    for (JudgingPlan plan : plans) {
      for (int i = 0; i < plan.size(); i++) {
        CautionBand band = plan.band(i);
        if (band.window().quantity() == quantity) {
          cases.add(new Case(plan, new WindowReach(band, reach, plan.procedure().current())));
        }
      }
    }
    return cases;
  }

  private static Finding resolution(String part, Case narrowest) {
    String detail =
        String.format(
            Locale.ROOT,
            "narrowest window %s: amber within %.3g %s, which is %.1f counts",
            narrowest.words(),
            narrowest.reach().band().band(),
            narrowest.reach().band().window().quantity().unit(),
            narrowest.reach().countsABand());
    return narrowest.reach().isCoarse()
        ? Finding.note(part, detail + "; too coarse", COARSE_MOVE)
        : Finding.good(part, detail);
  }

  private static Finding clipped(String part, Case clipped, Quantity quantity) {
    return Finding.bad(
        part,
        String.format(
            Locale.ROOT,
            "%s, needs %.1f %s (%s), but the channel clips at %.1f %s",
            clipped.words(),
            clipped.reach().needed(),
            quantity.unit(),
            clipped.plan().procedure().current().word(),
            clipped.reach().reach().largest(clipped.reach().polarity()),
            quantity.unit()),
        "take a sensor of larger range, or see that zero_count is in the middle of the counts");
  }

  private void openCircuit(ChannelReach voltage) {
    if (voltage.bothWays() < OPEN_CIRCUIT_VOLTS) {
      findings.add(
          Finding.note(
              "voltage",
              String.format(
                  Locale.ROOT,
                  "clips at %.1f V; an open circuit may stand at %.0f V (EN 60974-1)",
                  voltage.bothWays(),
                  OPEN_CIRCUIT_VOLTS),
              "nothing, if the divider and its isolation bear that: only open-circuit volts are"
                  + " not read"));
    }
  }

  private void shortCircuits() {
    if (heard == null) {
      findings.add(
          Finding.note(
              "shorts",
              "not known: the rate is known only from the source",
              "they need " + ShortCircuitRule.LEAST_PAIRS_PER_SECOND + " pairs/s or more"));
    } else if (ShortCircuitRule.isMeasurableAt(heard.pairsPerSecond())) {
      findings.add(Finding.good("shorts", "measured at " + heard.pairsPerSecond() + " pairs/s"));
    } else {
      findings.add(
          Finding.note(
              "shorts",
              "not measured at " + heard.pairsPerSecond() + " pairs/s" + askedFor(),
              "they need " + ShortCircuitRule.LEAST_PAIRS_PER_SECOND + " pairs/s or more"));
    }
  }

  private String askedFor() {
    return plans.stream()
        .filter(plan -> plan.pass().window(Quantity.SHORTS_PER_S) != null)
        .findFirst()
        .map(plan -> ", but " + plan.procedure().id() + " " + plan.pass().name() + " limits them")
        .orElse("");
  }
}
