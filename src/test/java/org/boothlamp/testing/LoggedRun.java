package org.boothlamp.testing;

import java.util.ArrayList;
import java.util.List;
import java.util.function.ToDoubleFunction;
import org.boothlamp.monitor.LogEntry;
import org.boothlamp.monitor.SegmentFigures;
import org.boothlamp.signal.PairScale;
import org.boothlamp.technique.RunFacts;
import org.boothlamp.technique.RunProfile;
import org.boothlamp.technique.Spell;
import org.boothlamp.technique.SwingFigures;
import org.boothlamp.technique.TransferFigures;

/** One segment as the pipeline told the log: its trace and its excursions. */
public final class LoggedRun {

  private final PairScale scale;
  private final List<LogEntry> points = new ArrayList<>();
  private final List<LogEntry> excursions = new ArrayList<>();
  private LogEntry end;

  private LoggedRun(PairScale scale) {
    this.scale = scale;
  }

  /** All finished segments of a pipeline's entries, in order. */
  public static List<LoggedRun> of(EntryCollector entries, PairScale scale) {
    List<LoggedRun> runs = new ArrayList<>();
    LoggedRun run = new LoggedRun(scale);
    for (LogEntry entry : entries.all()) {
      switch (entry.kind) {
        case SEGMENT_STARTED -> run = new LoggedRun(scale);
        case TRACE_POINT -> run.points.add(entry);
        case EXCURSION -> run.excursions.add(entry);
        case SEGMENT_ENDED -> {
          run.end = entry;
          runs.add(run);
        }
        default -> {}
      }
    }
    return runs;
  }

  /** Its figures, with what only the pipeline knows. */
  public LogEntry end() {
    return end;
  }

  /** Its trace. */
  public RunProfile profile() {
    return new RunProfile(
        values(p -> scale.current().toUnits(p.meanCurrentCount)),
        values(p -> scale.current().toUnits(p.lowestCurrentCount)),
        values(p -> scale.current().toUnits(p.highestCurrentCount)),
        values(p -> scale.voltage().toUnits(p.meanVoltageCount)),
        values(p -> scale.voltage().toUnits(p.lowestVoltageCount)),
        values(p -> scale.voltage().toUnits(p.highestVoltageCount)));
  }

  private double[] values(ToDoubleFunction<LogEntry> of) {
    return points.stream().mapToDouble(of).toArray();
  }

  /** What else the pipeline knows of it. */
  public RunFacts facts() {
    SegmentFigures figures = end.figures;
    return new RunFacts(
        figures.meanAmps,
        figures.rmsAmps,
        figures.arcOuts,
        TransferFigures.of(figures.shortCycles, scale, end.pairsPerSecond, figures.lengthSeconds),
        SwingFigures.of(figures.swings, scale, end.pairsPerSecond));
  }

  /** Its excursions. */
  public List<Spell> spells() {
    double start = end.figures.startSeconds;
    return excursions.stream()
        .map(
            e ->
                new Spell(
                    e.quantity,
                    e.side,
                    e.startSeconds - start,
                    e.startSeconds + e.lengthSeconds - start))
        .toList();
  }
}
