package org.boothlamp.report;

import java.util.List;

/**
 * One run with what the report says of it. Immutable.
 *
 * @param run as the log holds it
 * @param excursions by quantity and side
 * @param flags why its figures deserve less trust, if at all
 */
public record RunSummary(RunRecord run, List<ExcursionTally> excursions, List<RunFlag> flags) {

  public RunSummary {
    excursions = List.copyOf(excursions);
    flags = List.copyOf(flags);
  }

  static RunSummary of(RunRecord run, Spells wrongPolarity) {
    return new RunSummary(run, ExcursionTally.of(run.excursions()), RunFlag.of(run, wrongPolarity));
  }

  /** True if this flag is raised. */
  public boolean has(RunFlag flag) {
    return flags.contains(flag);
  }
}
