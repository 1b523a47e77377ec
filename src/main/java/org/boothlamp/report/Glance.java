package org.boothlamp.report;

import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;

/**
 * The class at a glance: a row a trainee, and beside whom to stand. A pure function. Immutable.
 *
 * @param shift what arc-on time is held against
 * @param rows in the order of the report's trainees
 * @param standBeside rows of trainees who were outside most, the first first
 */
public record Glance(ShiftTime shift, List<GlanceRow> rows, List<GlanceRow> standBeside) {

  /** As many as an instructor can stand beside in one shift; common practice, no source. */
  private static final int MOST_TO_STAND_BESIDE = 3;

  public Glance {
    rows = List.copyOf(rows);
    standBeside = List.copyOf(standBeside);
  }

  /**
   * What is known beside the shift itself.
   *
   * @param shift its length
   * @param signIns in order of time, with those before the shift that still held; empty if not
   *     known
   * @param earlier runs before the shift, as far back as is compared; empty if there are none
   */
  public record Beside(ShiftTime shift, List<SignInMoment> signIns, List<EarlierRun> earlier) {

    public Beside {
      signIns = List.copyOf(signIns);
      earlier = List.copyOf(earlier);
    }
  }

  /** The glance of a report. */
  public static Glance of(ShiftReport report, Beside beside) {
    Map<String, List<RunSummary>> runs =
        report.allRuns().stream().collect(Collectors.groupingBy(one -> one.run().trainee()));
    Map<String, List<EarlierRun>> earlier =
        beside.earlier().stream().collect(Collectors.groupingBy(EarlierRun::trainee));
    SignedInTime signedIn = new SignedInTime(beside.signIns(), beside.shift());
    List<GlanceRow> rows =
        report.trainees().stream()
            .map(
                trainee ->
                    row(
                        trainee,
                        runs.getOrDefault(trainee.trainee(), List.of()),
                        earlier.getOrDefault(trainee.trainee(), List.of()),
                        report.span(),
                        signedIn.of(trainee.trainee()),
                        beside.shift()))
            .toList();
    return new Glance(beside.shift(), rows, standBeside(rows));
  }

  /** Runs whose time of day is not known may be of another shift: they do not count here. */
  private static OperatorFactor operator(
      List<RunSummary> runs, ShiftTime shift, double signedInSeconds) {
    double arcSeconds =
        runs.stream()
            .filter(one -> !one.has(RunFlag.NO_TIME))
            .mapToDouble(one -> one.run().lengthSeconds())
            .sum();
    return new OperatorFactor(arcSeconds, shift.seconds(), signedInSeconds);
  }

  private static GlanceRow row(
      TraineeSummary trainee,
      List<RunSummary> runs,
      List<EarlierRun> earlier,
      ShiftSpan span,
      double signedInSeconds,
      ShiftTime shift) {
    List<EarlierRun> now = runs.stream().map(one -> EarlierRun.of(one.run())).toList();
    return new GlanceRow(
        trainee,
        runs,
        runs.stream().map(one -> one.run().booth()).distinct().sorted().toList(),
        (int) now.stream().filter(EarlierRun::isJudged).count(),
        OftenOutside.of(trainee, runs),
        operator(runs, shift, signedInSeconds),
        trainee.isSignedIn() ? ChangeAgainstLastShifts.of(now, earlier, span) : null,
        LookAt.of(trainee, wrongPolarity(runs)));
  }

  private static int wrongPolarity(List<RunSummary> runs) {
    return (int) runs.stream().filter(one -> one.has(RunFlag.WRONG_POLARITY)).count();
  }

  private static List<GlanceRow> standBeside(List<GlanceRow> rows) {
    return rows.stream()
        .filter(GlanceRow::asksForCompany)
        .sorted(Comparator.comparingDouble(GlanceRow::outsideShare).reversed())
        .limit(MOST_TO_STAND_BESIDE)
        .toList();
  }
}
