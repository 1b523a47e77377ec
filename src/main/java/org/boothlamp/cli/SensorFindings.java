package org.boothlamp.cli;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import org.boothlamp.health.HealthFault;
import org.boothlamp.health.HealthLimits;
import org.boothlamp.judging.JudgingPlan;
import org.boothlamp.monitor.RateWatch;
import org.boothlamp.signal.Polarity;

/**
 * One line for each fault that sensors can have: seen, not seen, or not judged because what it
 * shows by did not happen while somebody listened. Confined to one thread.
 */
final class SensorFindings {

  private static final String PART = "sensors";

  private final HeardSensors heard;
  private final List<JudgingPlan> plans;
  private final double heardSeconds;

  /** Findings about what was heard for so long, held against the passes that can be judged. */
  SensorFindings(HeardSensors heard, List<JudgingPlan> plans, double heardSeconds) {
    this.heard = heard;
    this.plans = List.copyOf(plans);
    this.heardSeconds = heardSeconds;
  }

  List<Finding> list() {
    List<Finding> findings = new ArrayList<>();
    for (HealthFault fault : HealthFault.values()) {
      findings.add(fault == HealthFault.WRONG_POLARITY ? polarity() : line(fault));
    }
    long unjudged = findings.stream().filter(finding -> !finding.fault().judged()).count();
    if (unjudged > 0) {
      findings.add(notAll(unjudged));
    }
    return findings;
  }

  private Finding notAll(long unjudged) {
    return Finding.note(
        PART,
        unjudged
            + " of "
            + HealthFault.values().length
            + " faults could not be judged in "
            + seconds(heardSeconds),
        "check --listen 40 while somebody welds a run and stops");
  }

  private Finding line(HealthFault fault) {
    if (heard.isSeen(fault)) {
      return seen(fault);
    }
    String obstacle = obstacle(fault);
    return obstacle.isEmpty() ? sound(fault, "not seen") : notJudged(fault, obstacle);
  }

  private static Finding seen(HealthFault fault) {
    String meaning = fault.meaning().substring(0, fault.meaning().length() - 1);
    String detail = fault.word() + ": " + meaning + "; limit: " + limit(fault);
    return Finding.bad(PART, detail, fault.nextMove()).about(about(fault, true));
  }

  private static Finding sound(HealthFault fault, String what) {
    return Finding.good(PART, fault.word() + ": " + what + "; limit: " + limit(fault))
        .about(about(fault, true));
  }

  private static Finding notJudged(HealthFault fault, String obstacle) {
    String detail = fault.word() + ": not judged, " + obstacle + "; limit: " + limit(fault);
    return Finding.note(PART, detail, "").about(about(fault, false));
  }

  private static Finding.Fault about(HealthFault fault, boolean judged) {
    return new Finding.Fault(fault.word(), judged, limit(fault));
  }

  private static String limit(HealthFault fault) {
    return switch (fault) {
      case SAMPLE_RATE -> percent(RateWatch.MOST_RATE_SHARE) + " off this computer's clock";
      case CLOCK_DRIFT -> percent(RateWatch.MOST_DRIFT_SHARE) + " off this computer's clock";
      default -> HealthLimits.of(fault);
    };
  }

  /** Why it could not be seen, as far as what was heard goes; empty if it could. */
  private String obstacle(HealthFault fault) {
    return switch (fault) {
      case CLIPPED, GAPS -> heard.isLongEnough() ? "" : "too little was heard";
      case FROZEN_CURRENT, FROZEN_VOLTAGE, AMPS_WITHOUT_VOLTS ->
          heard.hadCurrent() ? "" : "no current flowed long enough";
      case VOLTS_WITHOUT_AMPS, SENSORS_DISAGREE, WRONG_POLARITY ->
          heard.hadArc() ? "" : "no arc burned";
      case ZERO_DRIFT, NOISE -> heard.wasQuiet() ? "" : "it was not certain that no current flowed";
      case SAMPLE_RATE ->
          heard.tellableShare() <= RateWatch.MOST_RATE_SHARE
              ? ""
              : "samples came too seldom or too briefly";
      case CLOCK_DRIFT -> driftObstacle();
    };
  }

  private String driftObstacle() {
    double told = heard.tellableShare();
    if (told <= RateWatch.MOST_DRIFT_SHARE) {
      return "";
    }
    String soFar = Double.isNaN(told) ? "" : " (less than " + percent(told) + " so far)";
    return "it takes " + RateWatch.LONGEST_SECONDS + " s" + soFar;
  }

  /** Which procedures the current's direction fits. */
  private Finding polarity() {
    HealthFault fault = HealthFault.WRONG_POLARITY;
    if (!heard.hadArc()) {
      return notJudged(fault, obstacle(fault));
    }
    if (heard.isSeen(HealthFault.SENSORS_DISAGREE)) {
      return notJudged(fault, "the sensors disagree");
    }
    if (plans.isEmpty()) {
      return notJudged(fault, "no procedure is loaded");
    }
    String flows = "the current is " + heard.polarity().word();
    String fitting = procedures(EnumSet.of(heard.polarity()));
    String others = procedures(EnumSet.complementOf(EnumSet.of(heard.polarity())));
    if (fitting.isEmpty()) {
      String detail =
          fault.word()
              + ": "
              + flows
              + ", which fits no procedure: not "
              + others
              + "; limit: "
              + limit(fault);
      return Finding.bad(PART, detail, fault.nextMove()).about(about(fault, true));
    }
    return sound(fault, flows + ", fits " + fitting + (others.isEmpty() ? "" : ", not " + others));
  }

  /** Ids of those that ask for one of these, such as {@code S-1, S-2}. */
  private String procedures(Set<Polarity> asked) {
    return plans.stream()
        .map(JudgingPlan::procedure)
        .filter(procedure -> asked.contains(procedure.current()))
        .map(procedure -> procedure.id() + " (" + procedure.current().word() + ")")
        .distinct()
        .collect(Collectors.joining(", "));
  }

  private static String percent(double share) {
    return Wording.number(100 * share) + " %";
  }

  private static String seconds(double seconds) {
    return Wording.number(seconds) + " s";
  }
}
