package org.boothlamp.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import org.boothlamp.calibration.BoothHistories;

/**
 * A span of a booth's log, folded: what each trainee welded, how long, how much of it inside the
 * procedure, when it left it and which way, and what the numbers cannot be trusted for. Immutable;
 * keeps the run records it was made of.
 *
 * <p>Shares are of judged time, never of arc time: the first second of a run, runs without a
 * procedure and time under a fault are judged by nobody.
 *
 * @param span what it covers
 * @param booth booth id, or empty for several
 * @param title heading, may be empty
 * @param trainees by code; what happened while nobody was signed in comes last
 * @param total the whole class; without mean amps and volts
 * @param runs those whose time of day is known, in order of time
 * @param touches in order of time
 * @param events in order of time
 * @param untimed runs, touches and events whose time of day is not known; they may belong to
 *     another day, and are counted in all sums
 * @param calibrations what is to be said of calibrations
 * @param recomputed what the figures rest on if they are not those of the log; else null
 */
public record ShiftReport(
    ShiftSpan span,
    String booth,
    String title,
    List<TraineeSummary> trainees,
    Figures total,
    List<RunSummary> runs,
    List<TouchRecord> touches,
    List<EventRecord> events,
    List<UntimedSummary> untimed,
    CalibrationReview calibrations,
    Recomputed recomputed) {

  /** The stored word of the event that the current ran the wrong way. */
  static final String WRONG_POLARITY = "wrong polarity";

  public ShiftReport {
    trainees = List.copyOf(trainees);
    runs = List.copyOf(runs);
    touches = List.copyOf(touches);
    events = List.copyOf(events);
    untimed = List.copyOf(untimed);
  }

  /**
   * Folds what the log holds for a span.
   *
   * @param records taken as they are: whoever read them has chosen those of the span
   */
  public static ShiftReport of(ShiftRecords records, ShiftSpan span, String booth, String title) {
    return of(records, span, booth, title, CalibrationReview.NOT_READ, null);
  }

  /**
   * The same, with what is to be said of calibrations.
   *
   * @param calibrations all of the booth or booths
   * @param nowWallMillis time of day at which the report is made
   * @param recomputed what the figures rest on if they are not those of the log; else null
   */
  public static ShiftReport of(
      ShiftRecords records,
      ShiftSpan span,
      String booth,
      String title,
      BoothHistories calibrations,
      long nowWallMillis,
      Recomputed recomputed) {
    CalibrationReview review =
        CalibrationReview.of(calibrations, span, records.runs(), nowWallMillis);
    return of(records, span, booth, title, review, recomputed);
  }

  private static ShiftReport of(
      ShiftRecords records,
      ShiftSpan span,
      String booth,
      String title,
      CalibrationReview review,
      Recomputed recomputed) {
    ClassAdder trainees = new ClassAdder();
    trainees.add(records);
    records.untimed().forEach(start -> trainees.add(start.records()));
    return new ShiftReport(
        span,
        booth,
        title,
        trainees.summaries(),
        trainees.total(),
        runs(records, review, true),
        records.touches(),
        records.events(),
        records.untimed().stream().map(start -> untimed(start, review)).toList(),
        review,
        recomputed);
  }

  private static UntimedSummary untimed(UntimedStart start, CalibrationReview review) {
    ShiftRecords records = start.records();
    return new UntimedSummary(
        start.number(), runs(records, review, false), records.touches(), records.events());
  }

  private static List<RunSummary> runs(
      ShiftRecords records, CalibrationReview review, boolean timed) {
    Set<Long> withdrawn = Set.copyOf(review.withdrawnRuns());
    Set<Long> overdue = Set.copyOf(review.overdueRuns());
    Spells wrongPolarity = Spells.of(WRONG_POLARITY, records.events());
    List<RunSummary> runs = new ArrayList<>(records.runs().size());
    for (RunRecord run : records.runs()) {
      List<RunFlag> more = new ArrayList<>(0);
      if (withdrawn.contains(run.id())) {
        more.add(RunFlag.CALIBRATION_WITHDRAWN);
      }
      if (overdue.contains(run.id())) {
        more.add(RunFlag.CALIBRATION_OVERDUE);
      }
      runs.add(RunSummary.of(run, wrongPolarity, timed).with(more));
    }
    return runs;
  }

  /** All runs, those whose time of day is not known last. */
  public List<RunSummary> allRuns() {
    List<RunSummary> all = new ArrayList<>(runs);
    untimed.forEach(start -> all.addAll(start.runs()));
    return all;
  }

  /** Touches, whether their time of day is known or not. */
  public int touchCount() {
    return touches.size() + untimed.stream().mapToInt(start -> start.touches().size()).sum();
  }

  /** Trainees who signed in and did something. */
  public int traineeCount() {
    return (int) trainees.stream().filter(TraineeSummary::isSignedIn).count();
  }

  /** Touches that were stuck electrodes. */
  public int stuckCount() {
    return stuck(touches) + untimed.stream().mapToInt(start -> stuck(start.touches())).sum();
  }

  private static int stuck(List<TouchRecord> touches) {
    return (int) touches.stream().filter(TouchRecord::stuck).count();
  }
}
