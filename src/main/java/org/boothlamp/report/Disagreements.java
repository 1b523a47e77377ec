package org.boothlamp.report;

import java.util.ArrayList;
import java.util.List;
import org.boothlamp.calibration.CalibrationFinish;
import org.boothlamp.calibration.CalibrationFinish.Ending;
import org.boothlamp.calibration.CalibrationOutcome;
import org.boothlamp.calibration.CalibrationRecord;
import org.boothlamp.signal.ChannelScale;

/**
 * Holds what was signed against what this version of the program makes of the same points. The
 * signed numbers are the ones in force; a difference must be seen.
 */
final class Disagreements {

  /** What to do about them. */
  static final String ADVICE =
      "The numbers of the record are in force. Either the record was changed or the program computes"
          + " otherwise than it did; calibrate again before the numbers are relied on.";

  /** Larger than what another order of adding up can do, far smaller than any uncertainty. */
  private static final double TOLERANCE = 1e-6;

  private final CalibrationRecord record;
  private final CalibrationOutcome outcome;
  private final List<String> found = new ArrayList<>();

  private Disagreements(CalibrationRecord record, CalibrationOutcome outcome) {
    this.record = record;
    this.outcome = outcome;
  }

  static List<String> of(CalibrationRecord record, CalibrationOutcome outcome) {
    boolean signed = record.finish() != null && record.finish().ending() != Ending.ABANDONED;
    return signed ? new Disagreements(record, outcome).find() : List.of();
  }

  private List<String> find() {
    CalibrationFinish finish = record.finish();
    boolean accepted = outcome.verdict().isAccepted();
    if (accepted != record.isAccepted()) {
      found.add(
          "the record says "
              + finish.ending().word()
              + ", the points computed again are "
              + (accepted ? "accepted" : "refused: " + reasons()));
    }
    if (record.isAccepted() && outcome.uncertainty() != null) {
      compareNumbers(finish);
    }
    return found;
  }

  private String reasons() {
    return String.join(
        "; ", outcome.verdict().refusals().stream().map(refusal -> refusal.message()).toList());
  }

  private void compareNumbers(CalibrationFinish finish) {
    ChannelScale again = outcome.result().calibrate(record.head().nominal());
    double fullScale = record.head().fullScale();
    String unit = record.channel().unit();
    compare(
        "scale, " + unit + " a count",
        finish.scale().unitsPerCount(),
        again.unitsPerCount(),
        again.unitsPerCount());
    compare(
        "count at zero",
        finish.scale().zeroCount(),
        again.zeroCount(),
        fullScale / again.unitsPerCount());
    compareAt("U at zero, " + unit, finish, 0);
    compareAt("U at full scale, " + unit, finish, fullScale);
    if (!finish.nextDue().equals(outcome.verdict().nextDue())) {
      found.add(
          "next due: the record says "
              + finish.nextDue()
              + ", computed again "
              + outcome.verdict().nextDue());
    }
  }

  private void compareAt(String what, CalibrationFinish finish, double reading) {
    double again = outcome.uncertainty().bound().at(reading);
    compare(what, finish.uncertainty().at(reading), again, again);
  }

  private void compare(String what, double stored, double again, double size) {
    if (Math.abs(stored - again) > TOLERANCE * Math.abs(size)) {
      found.add(what + ": the record says " + stored + ", computed again " + again);
    }
  }
}
