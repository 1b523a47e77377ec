package org.boothlamp.boothlog;

import java.util.ArrayList;
import java.util.List;
import org.boothlamp.judging.JudgingPlan;
import org.boothlamp.monitor.LogEntry;
import org.boothlamp.monitor.SegmentFigures;
import org.boothlamp.report.ExcursionRecord;
import org.boothlamp.technique.RunFacts;
import org.boothlamp.technique.RunProfile;
import org.boothlamp.technique.SchoolScales;
import org.boothlamp.technique.Spell;
import org.boothlamp.technique.SwingFigures;
import org.boothlamp.technique.TechniqueReader;
import org.boothlamp.technique.TechniqueReading;
import org.boothlamp.technique.TransferFigures;
import org.tinylog.Logger;

/**
 * Keeps what has been saved of the running segment until its technique can be read. Confined to one
 * thread, which is not the sampler's: reading takes some milliseconds and a few megabytes.
 */
final class RunTechnique {

  /** Longer runs are not read: time and memory grow with the square of the length. */
  static final int MOST_POINTS = 300 * LogEntry.TRACE_HZ;

  private final LogEntry started;
  private final List<byte[]> chunks = new ArrayList<>();
  private final List<ExcursionRecord> excursions = new ArrayList<>();
  private int points;

  /**
   * Begins with nothing.
   *
   * @param started the entry that began the segment
   */
  RunTechnique(LogEntry started) {
    this.started = started;
  }

  /** Takes points in their stored form, the next after those before. */
  void addPoints(byte[] chunk) {
    points += chunk.length / TracePoints.POINT_BYTES;
    if (isReadable()) {
      chunks.add(chunk);
    } else {
      chunks.clear();
      excursions.clear();
    }
  }

  private boolean isReadable() {
    return started.assignment.plan() != null && points <= MOST_POINTS;
  }

  /** Takes the next excursion. */
  void addExcursion(ExcursionRecord excursion) {
    if (isReadable()) {
      excursions.add(excursion);
    }
  }

  /**
   * What the ended run says; null if it cannot be read. The run is worth more than its reading: no
   * failure leaves this method.
   */
  TechniqueReading read(SegmentFigures figures) {
    if (!isReadable() || points == 0) {
      return null;
    }
    try {
      return reader(started.assignment.plan()).read(profile(), spells(), facts(figures));
    } catch (RuntimeException failure) {
      Logger.error(
          failure,
          "the technique of a run cannot be read, the run itself is kept: start={} s, points={}",
          started.startSeconds,
          points);
      return null;
    }
  }

  private List<Spell> spells() {
    return excursions.stream()
        .map(e -> Spell.lasting(e.quantity(), e.side(), e.startSeconds(), e.lengthSeconds()))
        .toList();
  }

  private static TechniqueReader reader(JudgingPlan plan) {
    return new TechniqueReader(
        plan.procedure(), plan.pass(), plan.uncertainties(), SchoolScales.NONE);
  }

  private RunProfile profile() {
    SegmentTrace trace = new SegmentTrace(points);
    int first = 0;
    for (byte[] chunk : chunks) {
      TraceReading.fill(trace, first, chunk, started.scale);
      first += chunk.length / TracePoints.POINT_BYTES;
    }
    return new RunProfile(
        trace.meanAmps,
        trace.lowestAmps,
        trace.highestAmps,
        trace.meanVolts,
        trace.lowestVolts,
        trace.highestVolts);
  }

  private RunFacts facts(SegmentFigures figures) {
    return new RunFacts(
        figures.meanAmps, figures.rmsAmps, figures.arcOuts, transfer(figures), swings(figures));
  }

  private TransferFigures transfer(SegmentFigures figures) {
    return figures.shortCircuits < 0
        ? null
        : TransferFigures.of(
            figures.shortCycles, started.scale, started.pairsPerSecond, figures.lengthSeconds);
  }

  private SwingFigures swings(SegmentFigures figures) {
    return SwingFigures.of(figures.swings, started.scale, started.pairsPerSecond);
  }
}
