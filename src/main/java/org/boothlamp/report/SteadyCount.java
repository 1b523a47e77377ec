package org.boothlamp.report;

import java.util.List;

/**
 * How far a trainee is by the school's rule. Immutable.
 *
 * @param rule what the school asks
 * @param lastInARow runs that meet it without one between that does not, up to the last run
 * @param longestInARow the most there ever were in a row
 */
public record SteadyCount(SteadyRule rule, int lastInARow, int longestInARow) {

  /** Counts over runs in order of time. */
  static SteadyCount of(SteadyRule rule, List<RunRecord> runs) {
    int row = 0;
    int longest = 0;
    for (RunRecord run : runs) {
      if (rule.counts(run)) {
        row = rule.isMetBy(run) ? row + 1 : 0;
        longest = Math.max(longest, row);
      }
    }
    return new SteadyCount(rule, row, longest);
  }

  /** True if the last runs meet the rule. */
  public boolean isMet() {
    return lastInARow >= rule.runs();
  }

  /** What was counted, as a sentence. */
  public String words() {
    return "by the school's rule ("
        + Numbers.counted(rule.runs(), "run", "runs")
        + " in a row, each with "
        + Numbers.share(rule.leastShare())
        + " or more of its judged time in the window"
        + (rule.leastJudgedSeconds() > 0
            ? ", runs judged for less than "
                + Durations.words(rule.leastJudgedSeconds())
                + " passed over"
            : "")
        + "): "
        + (isMet() ? "steady enough to try the test, " : "not yet, ")
        + lastInARow
        + " in a row now, "
        + longestInARow
        + " at most";
  }
}
