package org.boothlamp.report;

import java.util.List;

/**
 * A trainee's way with one pass over several days. Immutable.
 *
 * @param pass procedure, revision, pass and limits
 * @param total all runs together
 * @param days those with runs, in order
 * @param judgedRuns runs of which any time was judged
 * @param interval of the share of judged time in the window; each run counts as one trial, because
 *     the moments of one run do not come independently; null if nothing was judged
 * @param trend of the share from run to run; null if there are too few runs
 * @param steady by the school's rule; null if it has none for this pass
 */
public record PassProgress(
    PassKey pass,
    Figures total,
    List<ProgressDay> days,
    int judgedRuns,
    WilsonInterval interval,
    Trend trend,
    SteadyCount steady) {

  public PassProgress {
    days = List.copyOf(days);
  }
}
