package org.boothlamp.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.boothlamp.calibration.CalibrationRecord;
import org.boothlamp.calibration.SensorInUse;

/** What a report says of calibrations, in sentences. */
final class CalibrationReviewWords {

  /** More row numbers than this are not written out. */
  private static final int MOST_RUNS = 12;

  private CalibrationReviewWords() {}

  /** Lines for the head of a report; empty if no calibrations were read. */
  static List<String> head(ShiftReport report) {
    List<String> lines = new ArrayList<>();
    CalibrationReview review = report.calibrations();
    byBooth(review).forEach((booth, channels) -> lines.add(states(booth, channels)));
    for (CalibrationReview.Change change : review.changes()) {
      String time = TimesOfDay.words(change.wallMillis(), report.span());
      lines.add("Since " + time + ": " + change.words() + ".");
    }
    if (report.recomputed() != null) {
      addRecomputed(lines, report.recomputed());
    }
    return lines;
  }

  private static Map<String, List<CalibrationReview.ChannelState>> byBooth(
      CalibrationReview review) {
    return review.channels().stream()
        .collect(
            Collectors.groupingBy(
                CalibrationReview.ChannelState::booth, TreeMap::new, Collectors.toList()));
  }

  private static String states(String booth, List<CalibrationReview.ChannelState> channels) {
    return (booth.isEmpty() ? "Calibration: " : "Calibration of " + booth + ": ")
        + channels.stream().map(CalibrationReviewWords::state).collect(Collectors.joining("; "))
        + ".";
  }

  private static String state(CalibrationReview.ChannelState channel) {
    String name = channel.channel().word();
    CalibrationRecord record = channel.record();
    if (channel.state() == SensorInUse.State.MISSING) {
      return name + " none";
    }
    String due = channel.state() == SensorInUse.State.OVERDUE ? ", OVERDUE since " : ", due ";
    return name
        + " no. "
        + record.number()
        + " of "
        + record.head().date()
        + due
        + record.finish().nextDue();
  }

  private static void addRecomputed(List<String> lines, Recomputed recomputed) {
    CalibrationRecord under = recomputed.under();
    lines.add(
        "RECOMPUTED, not as measured: "
            + Numbers.counted(recomputed.runs(), "run", "runs")
            + " under "
            + CalibrationReview.name(under)
            + " of "
            + under.head().date()
            + ".");
    lines.add("Exact: " + Recomputed.EXACT + ".");
    lines.add("Approximate: " + Recomputed.APPROXIMATE + ".");
    lines.add("Not recomputed: " + Recomputed.NOT_RECOMPUTED + ".");
    addLeftOut(lines, recomputed);
  }

  private static void addLeftOut(List<String> lines, Recomputed recomputed) {
    if (recomputed.notJudged() > 0) {
      lines.add(
          Numbers.counted(recomputed.notJudged(), "run", "runs")
              + " with limits cannot be judged again: AC, or U leaves no room for green.");
    }
    if (recomputed.zeroNotSeen() > 0) {
      lines.add(
          "In "
              + Numbers.counted(recomputed.zeroNotSeen(), "run", "runs")
              + " it is not known where the clamp's zero was: that of the calibration is taken.");
    }
    if (!recomputed.otherHardware().isEmpty()) {
      lines.add(
          "Left as measured, because the sensor's nominal scale was another then: "
              + runs(recomputed.otherHardware())
              + ".");
    }
  }

  /** Sentences about runs that a withdrawn or overdue calibration scaled. */
  static List<String> doubts(ShiftReport report) {
    List<String> doubts = new ArrayList<>();
    int all = report.runs().size();
    for (CalibrationReview.Use use : report.calibrations().uses()) {
      if (!use.withdrawn().isEmpty()) {
        doubts.add(withdrawn(use, all, report.span()));
      }
      if (!use.overdue().isEmpty()) {
        doubts.add(overdue(use, all));
      }
    }
    return doubts;
  }

  private static String withdrawn(CalibrationReview.Use use, int all, ShiftSpan span) {
    CalibrationRecord record = use.record();
    return in(use.withdrawn(), all)
        + record.channel().word()
        + " was scaled by calibration "
        + record.number()
        + ", which is withdrawn from "
        + span.local(record.withdrawal().fromWallMillis()).toLocalDate()
        + " on ("
        + record.withdrawal().reason()
        + "): "
        + runs(use.withdrawn())
        + ". Next: boothlamp report --calibration N computes them again under another one.";
  }

  private static String overdue(CalibrationReview.Use use, int all) {
    CalibrationRecord record = use.record();
    return in(use.overdue(), all)
        + record.channel().word()
        + " was scaled by calibration "
        + record.number()
        + ", overdue since "
        + record.finish().nextDue()
        + ": "
        + runs(use.overdue())
        + ". U was taken wider there.";
  }

  private static String in(List<Long> some, int all) {
    return "In " + some.size() + " of " + Numbers.counted(all, "run", "runs") + ", ";
  }

  /** "run 12", "runs 12, 13 and 5 more". */
  private static String runs(List<Long> ids) {
    String shown =
        ids.stream().limit(MOST_RUNS).map(String::valueOf).collect(Collectors.joining(", "));
    int more = ids.size() - MOST_RUNS;
    return (ids.size() == 1 ? "run " : "runs ")
        + shown
        + (more > 0 ? " and " + more + " more" : "");
  }
}
