package org.boothlamp.report;

import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.boothlamp.judging.Side;
import org.boothlamp.procedure.Quantity;

/**
 * The excursion that a trainee's runs had most often. Immutable.
 *
 * @param quantity which average
 * @param side below or above
 * @param count how many times
 * @param seconds their lengths together
 * @param worst the average farthest out, in the quantity's unit
 * @param runs in how many runs
 * @param pass name of the pass in which it lasted longest; may be empty
 */
public record OftenOutside(
    Quantity quantity, Side side, int count, double seconds, double worst, int runs, String pass) {

  private static final Comparator<ExcursionTally> BY_COUNT =
      Comparator.comparingInt(ExcursionTally::count).thenComparingDouble(ExcursionTally::seconds);

  /**
   * @param runs of one trainee
   * @return null if no average left its window
   */
  static OftenOutside of(TraineeSummary trainee, List<RunSummary> runs) {
    return trainee.total().excursions().stream()
        .max(BY_COUNT)
        .map(tally -> of(tally, runs))
        .orElse(null);
  }

  private static OftenOutside of(ExcursionTally tally, List<RunSummary> runs) {
    int inRuns = 0;
    Map<String, Double> secondsByPass = new HashMap<>();
    for (RunSummary summary : runs) {
      for (ExcursionTally own : summary.excursions()) {
        if (own.quantity() == tally.quantity() && own.side() == tally.side()) {
          inRuns++;
          secondsByPass.merge(summary.run().pass(), own.seconds(), Double::sum);
        }
      }
    }
    return new OftenOutside(
        tally.quantity(),
        tally.side(),
        tally.count(),
        tally.seconds(),
        tally.worst(),
        inRuns,
        longest(secondsByPass));
  }

  private static String longest(Map<String, Double> secondsByPass) {
    return secondsByPass.entrySet().stream()
        .max(Map.Entry.<String, Double>comparingByValue().thenComparing(Map.Entry.comparingByKey()))
        .map(Map.Entry::getKey)
        .orElse("");
  }
}
