package org.boothlamp.report;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.boothlamp.calibration.BoothHistories;
import org.boothlamp.calibration.CalibrationFinish;
import org.boothlamp.calibration.CalibrationHistory;
import org.boothlamp.calibration.CalibrationRecord;
import org.boothlamp.calibration.Channel;
import org.boothlamp.calibration.SensorInUse;

/**
 * What a report says of the calibrations of its span. Immutable.
 *
 * @param channels state of each channel at the end of the span; empty if no calibrations were read
 * @param changes what changed inside the span, in order of time
 * @param uses of each calibration that scaled a run, by number
 */
public record CalibrationReview(List<ChannelState> channels, List<Change> changes, List<Use> uses) {

  /** Nothing is known of calibrations, and nothing is said of them. */
  static final CalibrationReview NOT_READ = new CalibrationReview(List.of(), List.of(), List.of());

  /**
   * One channel at a moment.
   *
   * @param booth whose; empty if the report is of one booth alone
   * @param channel which sensor
   * @param state whether its calibration can be relied on
   * @param record the calibration; null if it is missing
   */
  public record ChannelState(
      String booth, Channel channel, SensorInUse.State state, CalibrationRecord record) {}

  /**
   * Something that happened to a calibration.
   *
   * @param wallMillis when, ms since the epoch
   * @param words what, without the time
   */
  public record Change(long wallMillis, String words) {}

  /**
   * Runs that one calibration scaled.
   *
   * @param record the calibration
   * @param runs all of them
   * @param withdrawn row numbers of those that began when it was withdrawn
   * @param overdue row numbers of those that began when it was overdue
   */
  public record Use(CalibrationRecord record, int runs, List<Long> withdrawn, List<Long> overdue) {

    public Use {
      withdrawn = List.copyOf(withdrawn);
      overdue = List.copyOf(overdue);
    }
  }

  public CalibrationReview {
    channels = List.copyOf(channels);
    changes = List.copyOf(changes);
    uses = List.copyOf(uses);
  }

  /**
   * Looks through a span.
   *
   * @param runs of the span, as they stand in the report
   * @param nowWallMillis time of day at which the report is made
   */
  static CalibrationReview of(
      BoothHistories histories, ShiftSpan span, List<RunRecord> runs, long nowWallMillis) {
    long end = Math.min(nowWallMillis, span.untilWallMillis() - 1);
    List<ChannelState> channels = new ArrayList<>();
    histories
        .ofBooth()
        .forEach((booth, history) -> addStates(channels, booth, history, end, dayOf(end, span)));
    return new CalibrationReview(
        channels, changes(histories, span, end), uses(histories.all(), span, runs));
  }

  private static void addStates(
      List<ChannelState> states,
      String booth,
      CalibrationHistory history,
      long end,
      LocalDate day) {
    for (Channel channel : Channel.values()) {
      states.add(state(booth, channel, history.inUse(channel, end), day));
    }
  }

  private static ChannelState state(
      String booth, Channel channel, CalibrationRecord record, LocalDate day) {
    if (record == null) {
      return new ChannelState(booth, channel, SensorInUse.State.MISSING, null);
    }
    boolean overdue = SensorInUse.isOverdue(record, day);
    return new ChannelState(
        booth, channel, overdue ? SensorInUse.State.OVERDUE : SensorInUse.State.OK, record);
  }

  private static LocalDate dayOf(long wallMillis, ShiftSpan span) {
    return span.local(wallMillis).toLocalDate();
  }

  private static List<Change> changes(BoothHistories histories, ShiftSpan span, long end) {
    List<Change> changes = new ArrayList<>();
    for (CalibrationRecord record : histories.all().records()) {
      if (record.isAccepted()) {
        String whose = histories.isOfSeveralBooths() ? " of " + record.head().booth() : "";
        addChanges(changes, record, name(record) + whose, span);
      }
    }
    changes.removeIf(
        change -> change.wallMillis() < span.fromWallMillis() || change.wallMillis() > end);
    changes.sort(Comparator.comparingLong(Change::wallMillis));
    return changes;
  }

  private static void addChanges(
      List<Change> changes, CalibrationRecord record, String name, ShiftSpan span) {
    CalibrationFinish finish = record.finish();
    changes.add(new Change(finish.wallMillis(), name + " came into force"));
    long due = finish.nextDue().atStartOfDay(span.zone()).toInstant().toEpochMilli();
    if (record.isGoodAt(due)) {
      changes.add(new Change(due, name + " became overdue"));
    }
    if (record.withdrawal() != null) {
      long from = record.withdrawal().fromWallMillis();
      String words = name + " is withdrawn from then on: " + record.withdrawal().reason();
      changes.add(new Change(from, words));
    }
  }

  /** "calibration 3 (current)". */
  static String name(CalibrationRecord record) {
    return "calibration " + record.number() + " (" + record.channel().word() + ")";
  }

  private static List<Use> uses(CalibrationHistory history, ShiftSpan span, List<RunRecord> runs) {
    List<Use> uses = new ArrayList<>();
    for (CalibrationRecord record : history.records()) {
      List<RunRecord> scaled =
          runs.stream()
              .filter(run -> run.calibrations().of(record.channel()) == record.number())
              .toList();
      if (!scaled.isEmpty() && record.isAccepted()) {
        uses.add(use(record, scaled, span));
      }
    }
    return uses;
  }

  private static Use use(CalibrationRecord record, List<RunRecord> scaled, ShiftSpan span) {
    List<Long> withdrawn = new ArrayList<>();
    List<Long> overdue = new ArrayList<>();
    for (RunRecord run : scaled) {
      if (isWithdrawn(record, run)) {
        withdrawn.add(run.id());
      } else if (isOverdue(record, run, span)) {
        overdue.add(run.id());
      }
    }
    return new Use(record, scaled.size(), withdrawn, overdue);
  }

  private static boolean isWithdrawn(CalibrationRecord record, RunRecord run) {
    return record.withdrawal() != null
        && run.startWallMillis() >= record.withdrawal().fromWallMillis();
  }

  private static boolean isOverdue(CalibrationRecord record, RunRecord run, ShiftSpan span) {
    return SensorInUse.isOverdue(record, dayOf(run.startWallMillis(), span));
  }

  /** Row numbers of runs that a withdrawn calibration scaled. */
  List<Long> withdrawnRuns() {
    return uses.stream().flatMap(use -> use.withdrawn().stream()).toList();
  }

  /** Row numbers of runs that an overdue calibration scaled. */
  List<Long> overdueRuns() {
    return uses.stream().flatMap(use -> use.overdue().stream()).toList();
  }
}
