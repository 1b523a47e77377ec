package org.boothlamp.report;

import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import org.boothlamp.report.Trend.Direction;

/**
 * A trainee's share of judged time in the window, in this shift and on his last days before it:
 * only of passes that were welded both times, because passes differ in how hard they are. The
 * interval of the difference is Newcombe's hybrid score interval (method 10 in Newcombe 1998,
 * Statistics in Medicine 17:873, from memory); each run counts as one trial, because the moments of
 * one run do not come independently. Immutable.
 *
 * @param share now, 0 to 1
 * @param runs judged runs now
 * @param earlierShare before, 0 to 1
 * @param earlierRuns judged runs before
 * @param days on how many days before
 * @param low lower limit of the difference now less before, -1 to 1
 * @param high upper limit
 */
public record ChangeAgainstLastShifts(
    double share,
    int runs,
    double earlierShare,
    int earlierRuns,
    int days,
    double low,
    double high) {

  /** Days with runs that are looked back at; common practice, no source. */
  static final int MOST_DAYS = 5;

  /** How far back is looked for them, days: a holiday lies in between, last term does not. */
  public static final int LOOK_BACK_DAYS = 28;

  /**
   * @param now runs of one trainee in this shift
   * @param earlier runs of the same trainee before it, in any order
   * @return null if nothing can be compared
   */
  static ChangeAgainstLastShifts of(
      List<EarlierRun> now, List<EarlierRun> earlier, ShiftSpan span) {
    List<EarlierRun> before = lastDays(judgedLike(earlier, now), span);
    List<EarlierRun> after = judgedLike(now, before);
    return before.isEmpty() || after.isEmpty() ? null : of(after, before, days(before, span));
  }

  private static List<EarlierRun> judgedLike(List<EarlierRun> runs, List<EarlierRun> others) {
    Predicate<EarlierRun> like =
        run -> others.stream().anyMatch(other -> other.isJudged() && other.isLike(run));
    return runs.stream().filter(EarlierRun::isJudged).filter(like).toList();
  }

  private static List<EarlierRun> lastDays(List<EarlierRun> runs, ShiftSpan span) {
    TreeMap<LocalDate, List<EarlierRun>> byDay = byDay(runs, span);
    return byDay.descendingMap().values().stream().limit(MOST_DAYS).flatMap(List::stream).toList();
  }

  private static TreeMap<LocalDate, List<EarlierRun>> byDay(List<EarlierRun> runs, ShiftSpan span) {
    return runs.stream()
        .collect(
            Collectors.groupingBy(
                run -> span.local(run.startWallMillis()).toLocalDate(),
                TreeMap::new,
                Collectors.toList()));
  }

  private static int days(List<EarlierRun> runs, ShiftSpan span) {
    Map<LocalDate, List<EarlierRun>> byDay = byDay(runs, span);
    return byDay.size();
  }

  private static ChangeAgainstLastShifts of(
      List<EarlierRun> after, List<EarlierRun> before, int days) {
    double now = share(after);
    double then = share(before);
    WilsonInterval nowLimits = WilsonInterval.of(now, after.size());
    WilsonInterval thenLimits = WilsonInterval.of(then, before.size());
    double change = now - then;
    return new ChangeAgainstLastShifts(
        now,
        after.size(),
        then,
        before.size(),
        days,
        change - Math.hypot(now - nowLimits.low(), thenLimits.high() - then),
        change + Math.hypot(nowLimits.high() - now, then - thenLimits.low()));
  }

  private static double share(List<EarlierRun> runs) {
    double inside = runs.stream().mapToDouble(EarlierRun::insideSeconds).sum();
    double judged = runs.stream().mapToDouble(EarlierRun::judgedSeconds).sum();
    return Math.min(1, inside / judged);
  }

  /** Now less before, -1 to 1. */
  public double change() {
    return share - earlierShare;
  }

  /** Which way it goes, as far as the interval allows to say. */
  public Direction direction() {
    if (low > 0) {
      return Direction.BETTER;
    }
    return high < 0 ? Direction.WORSE : Direction.CANNOT_TELL;
  }
}
