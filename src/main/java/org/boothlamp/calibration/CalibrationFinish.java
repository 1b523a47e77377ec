package org.boothlamp.calibration;

import java.time.LocalDate;
import org.boothlamp.judging.ExpandedUncertainty;
import org.boothlamp.signal.ChannelScale;

/**
 * How a calibration ended, with the numbers the booth measures by from then on. They are stored and
 * not computed again, so that a later version of the program cannot change what was signed.
 * Immutable.
 *
 * @param ending accepted, refused or given up
 * @param wallMillis time of day, ms since the epoch
 * @param scale the calibrated scale; null unless accepted
 * @param uncertainty U of a calibrated reading; null unless accepted
 * @param nextDue day from which the calibration is overdue; null unless accepted
 * @param note why it was refused or given up, for people; empty if accepted
 */
public record CalibrationFinish(
    Ending ending,
    long wallMillis,
    ChannelScale scale,
    ExpandedUncertainty uncertainty,
    LocalDate nextDue,
    String note) {

  /** How it ended. */
  public enum Ending {
    ACCEPTED("accepted"),
    REFUSED("refused"),
    ABANDONED("abandoned");

    private final String word;

    Ending(String word) {
      this.word = word;
    }

    /** As records store it. */
    public String word() {
      return word;
    }
  }

  public CalibrationFinish {
    boolean complete = scale != null && uncertainty != null && nextDue != null;
    boolean empty = scale == null && uncertainty == null && nextDue == null;
    if (ending == Ending.ACCEPTED ? !complete : !empty) {
      throw new IllegalArgumentException(
          "scale, uncertainty and due date belong to an accepted calibration and to no other:"
              + " ending="
              + ending);
    }
  }

  /** The finish that an outcome leads to. */
  public static CalibrationFinish of(CalibrationOutcome outcome, long wallMillis) {
    Verdict verdict = outcome.verdict();
    if (!verdict.isAccepted()) {
      String note = String.join("; ", verdict.refusals().stream().map(Refusal::message).toList());
      return new CalibrationFinish(Ending.REFUSED, wallMillis, null, null, null, note);
    }
    return new CalibrationFinish(
        Ending.ACCEPTED,
        wallMillis,
        outcome.calibratedScale(),
        outcome.uncertainty().bound(),
        verdict.nextDue(),
        "");
  }

  /** A calibration that was given up. */
  public static CalibrationFinish abandoned(long wallMillis, String reason) {
    return new CalibrationFinish(Ending.ABANDONED, wallMillis, null, null, null, reason);
  }
}
