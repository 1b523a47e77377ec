package org.boothlamp.report;

import java.util.List;
import java.util.stream.Stream;

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

  /** A run with what the events beside it say; {@code timed} if its time of day is known. */
  static RunSummary of(RunRecord run, Spells wrongPolarity, boolean timed) {
    return new RunSummary(
        run, ExcursionTally.of(run.excursions()), RunFlag.of(run, wrongPolarity, timed));
  }

  /** The same run with more flags, in their usual order. */
  RunSummary with(List<RunFlag> more) {
    return more.isEmpty()
        ? this
        : new RunSummary(
            run, excursions, Stream.concat(flags.stream(), more.stream()).sorted().toList());
  }

  /** True if this flag is raised. */
  public boolean has(RunFlag flag) {
    return flags.contains(flag);
  }
}
