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
 * @param total of the whole class
 */
public record Glance(
    ShiftTime shift, List<GlanceRow> rows, List<GlanceRow> standBeside, OperatorFactor total) {

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
        report.runs().stream().collect(Collectors.groupingBy(one -> one.run().trainee()));
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
                        operator(trainee, beside.shift(), signedIn)))
            .toList();
    double arcSeconds = report.total().arcSeconds();
    OperatorFactor total = new OperatorFactor(arcSeconds, beside.shift().seconds(), Double.NaN);
    return new Glance(beside.shift(), rows, standBeside(rows), total);
  }

  private static OperatorFactor operator(
      TraineeSummary trainee, ShiftTime shift, SignedInTime signedIn) {
    double seconds = trainee.isSignedIn() ? signedIn.of(trainee.trainee()) : Double.NaN;
    return new OperatorFactor(trainee.total().arcSeconds(), shift.seconds(), seconds);
  }

  private static GlanceRow row(
      TraineeSummary trainee,
      List<RunSummary> runs,
      List<EarlierRun> earlier,
      ShiftSpan span,
      OperatorFactor operator) {
    List<EarlierRun> now = runs.stream().map(one -> EarlierRun.of(one.run())).toList();
    return new GlanceRow(
        trainee,
        runs,
        runs.stream().map(one -> one.run().booth()).distinct().sorted().toList(),
        (int) now.stream().filter(EarlierRun::isJudged).count(),
        OftenOutside.of(trainee, runs),
        operator,
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
