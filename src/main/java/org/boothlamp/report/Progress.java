package org.boothlamp.report;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/**
 * Each trainee's way over the days of a span: how much of the judged time was in the window, how
 * surely, and which way it goes. What was welded while nobody was signed in is nobody's way and
 * left out. A pure function. Immutable.
 *
 * @param span what it covers
 * @param trainees by code
 */
public record Progress(ShiftSpan span, List<TraineeProgress> trainees) {

  public Progress {
    trainees = List.copyOf(trainees);
  }

  /**
   * @param runs of the span, in order of time
   * @param rules the school's; empty if it has none
   */
  public static Progress of(List<RunRecord> runs, ShiftSpan span, List<SteadyRule> rules) {
    Map<String, List<RunRecord>> byTrainee = new TreeMap<>();
    for (RunRecord run : runs) {
      if (!run.trainee().isEmpty()) {
        byTrainee.computeIfAbsent(run.trainee(), code -> new ArrayList<>()).add(run);
      }
    }
    List<TraineeProgress> trainees = new ArrayList<>();
    byTrainee.forEach((code, own) -> trainees.add(trainee(code, own, span, rules)));
    return new Progress(span, trainees);
  }

  private static TraineeProgress trainee(
      String code, List<RunRecord> runs, ShiftSpan span, List<SteadyRule> rules) {
    Map<PassKey, List<RunRecord>> byPass = new LinkedHashMap<>();
    for (RunRecord run : runs) {
      byPass.computeIfAbsent(PassKey.of(run), key -> new ArrayList<>()).add(run);
    }
    List<PassProgress> passes = new ArrayList<>();
    byPass.forEach((key, own) -> passes.add(pass(key, own, span, rules)));
    double arcSeconds = runs.stream().mapToDouble(RunRecord::lengthSeconds).sum();
    return new TraineeProgress(code, arcSeconds, runs.size(), passes);
  }

  private static PassProgress pass(
      PassKey key, List<RunRecord> runs, ShiftSpan span, List<SteadyRule> rules) {
    Figures total = figures(runs);
    List<Double> shares =
        runs.stream().filter(run -> run.judgedSeconds() > 0).map(RunRecord::insideShare).toList();
    WilsonInterval interval =
        shares.isEmpty() ? null : WilsonInterval.of(total.insideShare(), shares.size());
    SteadyRule rule = ruleFor(key, rules);
    SteadyCount steady = rule == null ? null : SteadyCount.of(rule, runs);
    return new PassProgress(
        key, total, days(runs, span), shares.size(), interval, Trend.of(shares), steady);
  }

  private static List<ProgressDay> days(List<RunRecord> runs, ShiftSpan span) {
    Map<LocalDate, List<RunRecord>> byDay = new TreeMap<>();
    for (RunRecord run : runs) {
      LocalDate day = span.local(run.startWallMillis()).toLocalDate();
      byDay.computeIfAbsent(day, date -> new ArrayList<>()).add(run);
    }
    List<ProgressDay> days = new ArrayList<>();
    byDay.forEach((day, own) -> days.add(new ProgressDay(day, figures(own))));
    return days;
  }

  private static Figures figures(List<RunRecord> runs) {
    Figures.Adder adder = new Figures.Adder();
    runs.forEach(adder::add);
    return adder.figures();
  }

  /** The rule that is meant most narrowly; null if none holds. A run without limits has no rule. */
  private static SteadyRule ruleFor(PassKey key, List<SteadyRule> rules) {
    return rules.stream()
        .filter(rule -> !key.isNone() && rule.isFor(key))
        .max(Comparator.comparingInt(SteadyRule::narrowness))
        .orElse(null);
  }
}
