package org.boothlamp.report;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Predicate;
import org.boothlamp.calibration.CalibrationRecord;
import org.boothlamp.calibration.SensorInUse;

/** What a shift's figures cannot be trusted for, in the language of a page. */
final class ShiftDoubts {

  private final ShiftReport report;
  private final ShiftWords words;
  private final List<String> sentences = new ArrayList<>();

  private ShiftDoubts(ShiftReport report, ShiftWords words) {
    this.report = report;
    this.words = words;
  }

  /** All doubts, those about calibrations first, those of events last; empty if there are none. */
  static List<String> of(ShiftReport report, ShiftWords words) {
    ShiftDoubts doubts = new ShiftDoubts(report, words);
    doubts.addCalibrations();
    for (RunFlag flag : RunFlag.values()) {
      doubts.addRuns(words.say("doubt." + flag.word().replace(' ', '-')), run -> run.has(flag));
    }
    doubts.addRuns(words.say("doubt.no-trainee"), one -> one.run().trainee().isEmpty());
    doubts.addRuns(words.say("doubt.no-procedure"), one -> one.run().procedureId().isEmpty());
    doubts.addRuns(words.say("doubt.no-shorts"), one -> one.run().shortCircuits() < 0);
    doubts.sentences.addAll(ShiftEvents.of(report, words, true));
    return List.copyOf(doubts.sentences);
  }

  private void addCalibrations() {
    if (report.recomputed() != null) {
      CalibrationRecord under = report.recomputed().under();
      sentences.add(words.say("recomputed", Long.toString(under.number())));
    }
    if (report.calibrations().channels().isEmpty()) {
      sentences.add(words.say("calibration.not-read"));
    }
    for (CalibrationReview.Use use : report.calibrations().uses()) {
      addUse("calibration.withdrawn", use, use.withdrawn());
      addUse("calibration.overdue-runs", use, use.overdue());
    }
  }

  private void addUse(String key, CalibrationReview.Use use, List<Long> runs) {
    if (!runs.isEmpty()) {
      sentences.add(
          words.say(
              key,
              Integer.toString(runs.size()),
              words.runs(report.allRuns().size()),
              words.channel(use.record().channel()),
              Long.toString(use.record().number())));
    }
  }

  private void addRuns(String doubt, Predicate<RunSummary> isIn) {
    long count = report.allRuns().stream().filter(isIn).count();
    if (count > 0) {
      sentences.add(
          words.say("doubt.in", Long.toString(count), words.runs(report.allRuns().size()), doubt));
    }
  }

  /** The state of each sensor's calibration at the end of the shift; empty if none was read. */
  static List<String> calibrations(ShiftReport report, ShiftWords words) {
    return report.calibrations().channels().stream().map(one -> state(one, words)).toList();
  }

  private static String state(CalibrationReview.ChannelState channel, ShiftWords words) {
    String sensor = words.channel(channel.channel());
    String name =
        channel.booth().isEmpty() ? sensor : VisibleText.of(channel.booth()) + ", " + sensor;
    if (channel.state() == SensorInUse.State.MISSING) {
      return words.say("calibration.missing", name);
    }
    CalibrationRecord record = channel.record();
    return words.say(
        channel.state() == SensorInUse.State.OVERDUE ? "calibration.overdue" : "calibration.ok",
        name,
        Long.toString(record.number()),
        record.head().date().toString(),
        record.finish().nextDue().toString());
  }
}
