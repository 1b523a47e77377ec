package org.boothlamp.report;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;
import java.util.function.Predicate;

/** What the runs themselves say against their figures, in sentences. */
final class Doubts {

  private final List<RunSummary> runs;
  private final List<String> sentences = new ArrayList<>();

  private Doubts(List<RunSummary> runs) {
    this.runs = runs;
  }

  /** The doubts about a shift's runs, the widest first; empty if there are none. */
  static List<String> of(ShiftReport report) {
    Doubts doubts = new Doubts(report.runs());
    doubts.addFlags(report.total());
    doubts.addUnknowns();
    doubts.addChangedLimits(report.trainees());
    return List.copyOf(doubts.sentences);
  }

  private void addFlags(Figures total) {
    addIfAny(
        has(RunFlag.UNCALIBRATED),
        "the sensors had no calibration: how far amps and volts are off is not known.");
    addIfAny(
        has(RunFlag.WRONG_POLARITY),
        "the current ran the other way than the procedure asks: judged time and share say little.");
    addIfAny(
        has(RunFlag.FAULT),
        "the lamp was in fault, for "
            + Durations.words(total.faultSeconds())
            + " together: that time is not judged.");
    addIfAny(
        has(RunFlag.GAPS),
        "samples are missing, "
            + Durations.words(total.missingSeconds())
            + " together: the time counts to the length, not to the means.");
    addIfAny(
        has(RunFlag.POWER_LOSS),
        "the power went: the figures are those of the last save, up to 2 s before.");
    addIfAny(has(RunFlag.STOPPED), "the arc still burned when the monitor stopped.");
  }

  private void addUnknowns() {
    addIfAny(
        summary -> summary.run().trainee().isEmpty(),
        "nobody had signed in: they count to no trainee.");
    addIfAny(
        summary -> summary.run().procedureId().isEmpty(),
        "no procedure was loaded: they were measured, not judged.");
    addIfAny(
        summary -> summary.run().shortCircuits() < 0,
        "short circuits were not measured: the sensors are too slow to see them.");
  }

  private static Predicate<RunSummary> has(RunFlag flag) {
    return summary -> summary.has(flag);
  }

  private void addIfAny(Predicate<RunSummary> applies, String sentence) {
    long count = runs.stream().filter(applies).count();
    if (count > 0) {
      sentences.add("In " + count + " of " + runCount() + ", " + sentence);
    }
  }

  private String runCount() {
    return Numbers.counted(runs.size(), "run", "runs");
  }

  private void addChangedLimits(List<TraineeSummary> trainees) {
    Map<String, PassKey> seen = new HashMap<>();
    TreeSet<String> changed = new TreeSet<>();
    for (TraineeSummary trainee : trainees) {
      for (PassSummary summary : trainee.passes()) {
        PassKey pass = summary.pass();
        String name = nameOf(pass);
        PassKey before = seen.putIfAbsent(name, pass);
        if (before != null && !before.equals(pass)) {
          changed.add(name);
        }
      }
    }
    for (String name : changed) {
      sentences.add(
          "The limits of "
              + name
              + " changed without a new revision: runs before and after are listed apart.");
    }
  }

  private static String nameOf(PassKey pass) {
    return Words.pass(new PassKey(pass.procedureId(), pass.revision(), pass.pass(), List.of()));
  }
}
