package org.boothlamp.cli;

import java.util.ArrayList;
import java.util.List;
import org.boothlamp.judging.JudgingPlan;
import org.boothlamp.monitor.Assignment;
import org.boothlamp.monitor.BoothLogSink;
import org.boothlamp.monitor.LogEntry;
import org.boothlamp.monitor.SegmentFigures;
import org.boothlamp.procedure.Window;
import org.boothlamp.report.EventRecord;
import org.boothlamp.report.ExcursionRecord;
import org.boothlamp.report.RunNotes;
import org.boothlamp.report.RunRecord;
import org.boothlamp.report.ShiftRecords;
import org.boothlamp.report.TouchRecord;

/**
 * A log in memory, for a replay: what the monitor finds, as the records that a report is made of.
 * Traces are not kept. Confined to one thread.
 */
final class ReplayCollector implements BoothLogSink {

  private final List<RunRecord> runs = new ArrayList<>();
  private final List<TouchRecord> touches = new ArrayList<>();
  private final List<EventRecord> events = new ArrayList<>();
  private final List<ExcursionRecord> excursions = new ArrayList<>();
  private double segmentStartSeconds;

  @Override
  public boolean offer(LogEntry entry) {
    switch (entry.kind) {
      case SEGMENT_STARTED -> begin(entry);
      case EXCURSION -> excursions.add(excursion(entry));
      case SEGMENT_ENDED -> runs.add(run(entry));
      case SEGMENT_DROPPED -> excursions.clear();
      case TOUCH -> touches.add(touch(entry));
      case EVENT_ENDED -> events.add(event(entry));
      case TRACE_POINT, SEGMENT_PROGRESS, EVENT_STARTED -> {
        // a replay is told once it is whole
      }
    }
    return true;
  }

  private void begin(LogEntry entry) {
    excursions.clear();
    segmentStartSeconds = entry.startSeconds;
  }

  private ExcursionRecord excursion(LogEntry entry) {
    return new ExcursionRecord(
        entry.quantity,
        entry.side,
        entry.startSeconds - segmentStartSeconds,
        entry.lengthSeconds,
        entry.worst);
  }

  private RunRecord run(LogEntry entry) {
    SegmentFigures figures = entry.figures;
    Assignment assignment = entry.assignment;
    JudgingPlan plan = assignment.plan();
    return new RunRecord(
        runs.size() + 1,
        "",
        assignment.trainee(),
        plan == null ? "" : plan.procedure().id(),
        plan == null ? "" : plan.procedure().revision(),
        plan == null ? "" : plan.pass().name(),
        plan == null ? "" : plan.procedure().process().number(),
        plan == null ? List.<Window>of() : plan.pass().windows(),
        entry.wallMillis,
        figures.startSeconds,
        figures.lengthSeconds,
        figures.meanAmps,
        figures.meanVolts,
        figures.rmsAmps,
        figures.rmsVolts,
        figures.energyJoules,
        figures.meanWatts,
        figures.polarity,
        figures.shortCircuits,
        figures.arcOuts,
        figures.greenSeconds,
        figures.amberSeconds,
        figures.redSeconds,
        figures.settlingSeconds,
        figures.faultSeconds,
        figures.missingSeconds,
        plan != null && plan.isCalibrated(),
        entry.calibrations,
        entry.end.word(),
        excursions,
        RunNotes.NONE);
  }

  private static TouchRecord touch(LogEntry entry) {
    return new TouchRecord(
        entry.assignment.trainee(),
        entry.wallMillis,
        entry.startSeconds,
        entry.lengthSeconds,
        entry.stuck);
  }

  private static EventRecord event(LogEntry entry) {
    return new EventRecord(
        entry.event.word(),
        entry.event.isFault(),
        entry.wallMillis,
        entry.startSeconds,
        entry.lengthSeconds,
        entry.count,
        "");
  }

  /** Everything so far. */
  ShiftRecords records() {
    return new ShiftRecords(runs, touches, events);
  }
}
