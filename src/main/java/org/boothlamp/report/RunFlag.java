package org.boothlamp.report;

import java.util.ArrayList;
import java.util.List;

/** Why the figures of a run deserve less trust than others. */
public enum RunFlag {
  /** The clock was never set while it was welded. */
  NO_TIME("time of day not known"),
  /** The sensors had no calibration. */
  UNCALIBRATED("uncalibrated"),
  /** A calibration that scaled it is withdrawn from before it on. */
  CALIBRATION_WITHDRAWN("calibration withdrawn"),
  /** A calibration that scaled it was overdue. */
  CALIBRATION_OVERDUE("calibration overdue"),
  /** The current ran the other way than the procedure asks. */
  WRONG_POLARITY("wrong polarity"),
  /** The lamp was in fault for part of it. */
  FAULT("fault"),
  /** Samples are missing inside, or were when it ended. */
  GAPS("gaps"),
  /** The power went: the figures are those of the last save. */
  POWER_LOSS("power loss"),
  /** The monitor was stopped, or the recording ended, while the arc burned. */
  STOPPED("stopped");

  private final String word;

  RunFlag(String word) {
    this.word = word;
  }

  /** The word for people and files. */
  public String word() {
    return word;
  }

  /** The flags of a run; the words of {@link RunRecord#end()} are those stored in the log. */
  static List<RunFlag> of(RunRecord run, Spells wrongPolarity, boolean timed) {
    List<RunFlag> flags = new ArrayList<>(2);
    addIf(flags, NO_TIME, !timed);
    addIf(flags, UNCALIBRATED, !run.calibrated());
    addIf(flags, WRONG_POLARITY, wrongPolarity.overlap(run));
    addIf(flags, FAULT, run.faultSeconds() > 0);
    addIf(flags, GAPS, run.missingSeconds() > 0 || run.end().equals("gap"));
    addIf(flags, POWER_LOSS, run.end().equals("power loss"));
    addIf(flags, STOPPED, run.end().equals("stopped"));
    return List.copyOf(flags);
  }

  private static void addIf(List<RunFlag> flags, RunFlag flag, boolean raised) {
    if (raised) {
      flags.add(flag);
    }
  }
}
