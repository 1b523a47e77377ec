package org.boothlamp.report;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;
import org.boothlamp.calibration.CalibrationNumbers;

/** What the runs themselves say against their figures, in sentences. */
final class Doubts {

  private final int runs;
  private final int[] flagged = new int[RunFlag.values().length];
  private final List<String> sentences = new ArrayList<>();
  private int withoutTrainee;
  private int withoutProcedure;
  private int withoutShortCircuits;
  private int withoutCurrent;
  private int withoutVoltage;

  private Doubts(List<RunSummary> summaries) {
    runs = summaries.size();
    for (RunSummary summary : summaries) {
      count(summary);
    }
  }

  private void count(RunSummary summary) {
    for (RunFlag flag : summary.flags()) {
      flagged[flag.ordinal()]++;
    }
    RunRecord run = summary.run();
    withoutTrainee += run.trainee().isEmpty() ? 1 : 0;
    withoutProcedure += run.procedureId().isEmpty() ? 1 : 0;
    withoutShortCircuits += run.shortCircuits() < 0 ? 1 : 0;
    CalibrationNumbers calibrations = run.calibrations();
    withoutCurrent += calibrations.current() == 0 && calibrations.voltage() != 0 ? 1 : 0;
    withoutVoltage += calibrations.voltage() == 0 && calibrations.current() != 0 ? 1 : 0;
  }

  /** The doubts about a shift's runs, the widest first; empty if there are none. */
  static List<String> of(ShiftReport report) {
    Doubts doubts = new Doubts(report.allRuns());
    doubts.addUntimed();
    doubts.addUncalibrated();
    doubts.sentences.addAll(CalibrationReviewWords.doubts(report));
    doubts.addFlags(report.total());
    doubts.addUnknowns();
    doubts.addChangedLimits(report.trainees());
    return List.copyOf(doubts.sentences);
  }

  private void addUntimed() {
    addIfAny(
        flagged(RunFlag.NO_TIME),
        "the time of day is not known: the clock was never set while they were welded, and they may"
            + " belong to another day.");
  }

  private void addUncalibrated() {
    addIfAny(
        flagged(RunFlag.UNCALIBRATED) - withoutCurrent - withoutVoltage,
        "the sensors had no calibration: how far amps and volts are off is not known.");
    addIfAny(
        withoutCurrent,
        "the current's sensor had no calibration: how far the amps are off is not known.");
    addIfAny(
        withoutVoltage,
        "the voltage's sensor had no calibration: how far the volts are off is not known.");
  }

  private void addFlags(Figures total) {
    addIfAny(
        flagged(RunFlag.WRONG_POLARITY),
        "the current ran the other way than the procedure asks: judged time and share say little.");
    addIfAny(
        flagged(RunFlag.FAULT),
        "the lamp was in fault, for "
            + Durations.words(total.faultSeconds())
            + " together: that time is not judged.");
    addIfAny(
        flagged(RunFlag.GAPS),
        "samples are missing, "
            + Durations.words(total.missingSeconds())
            + " together: the time counts to the length, not to the means.");
    addIfAny(
        flagged(RunFlag.POWER_LOSS),
        "the power went: the figures are those of the last save, up to 2 s before.");
    addIfAny(flagged(RunFlag.STOPPED), "the arc still burned when the monitor stopped.");
  }

  private void addUnknowns() {
    addIfAny(withoutTrainee, "nobody had signed in: they count to no trainee.");
    addIfAny(withoutProcedure, "no procedure was loaded: they were measured, not judged.");
    addIfAny(
        withoutShortCircuits,
        "short circuits were not measured: the sensors are too slow to see them.");
  }

  private int flagged(RunFlag flag) {
    return flagged[flag.ordinal()];
  }

  private void addIfAny(int count, String sentence) {
    if (count > 0) {
      sentences.add(
          "In " + count + " of " + Numbers.counted(runs, "run", "runs") + ", " + sentence);
    }
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
