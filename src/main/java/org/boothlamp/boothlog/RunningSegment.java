package org.boothlamp.boothlog;

import java.util.ArrayList;
import java.util.List;
import java.util.function.LongSupplier;
import org.boothlamp.monitor.LogEntry;
import org.boothlamp.monitor.SegmentEnd;
import org.boothlamp.monitor.SegmentFigures;
import org.boothlamp.procedure.Window;
import org.boothlamp.report.ExcursionRecord;
import org.boothlamp.technique.TechniqueReading;

/**
 * The segment that is being welded. Nothing of it reaches the batch before its first save, for it
 * may turn out to be a touch; afterwards it is saved so often that a power loss takes no more than
 * its last two seconds. Confined to one thread.
 */
final class RunningSegment {

  /**
   * Length between two saves, s. Each is a commit, and commits wear the card out; what is left of 2
   * s is for the commit itself.
   */
  private static final double SAVE_SECONDS = 1.9;

  /** Figures come on whole slots, which are not exact in binary. */
  private static final double ROUNDING_SECONDS = 1e-6;

  private final LogEntry started = new LogEntry();
  private final LogBatch batch;
  private final LongSupplier nextId;
  private final TracePoints points = new TracePoints();
  private final List<ExcursionRecord> excursions = new ArrayList<>();
  private final List<byte[]> chunks = new ArrayList<>();
  private final SegmentFigures latest = new SegmentFigures();
  private final RunTechnique technique = new RunTechnique(started);
  private SegmentRow row;
  private int savedExcursions;
  private int savedPoints;
  private double savedSeconds;

  RunningSegment(LogEntry started, LogBatch batch, LongSupplier nextId) {
    this.started.set(started);
    this.batch = batch;
    this.nextId = nextId;
  }

  void addPoint(LogEntry entry) {
    if (points.isFull()) {
      chunks.add(points.take());
    }
    points.add(entry);
  }

  void addExcursion(LogEntry entry) {
    excursions.add(
        new ExcursionRecord(
            entry.quantity,
            entry.side,
            entry.startSeconds - started.startSeconds,
            entry.lengthSeconds,
            entry.worst));
  }

  /** Takes the figures so far, and saves them if it is time, or will be before the next come. */
  void progress(SegmentFigures figures) {
    double sinceLast = figures.lengthSeconds - latest.lengthSeconds;
    double unsaved = figures.lengthSeconds - savedSeconds;
    latest.set(figures);
    if (unsaved + sinceLast > SAVE_SECONDS + ROUNDING_SECONDS) {
      save(null);
    }
  }

  /** Saves the final figures. */
  void end(SegmentFigures figures, SegmentEnd why) {
    latest.set(figures);
    save(why);
  }

  /** Ends with the figures last heard of. A segment that never sent any leaves nothing. */
  void endAsKnown(SegmentEnd why) {
    if (latest.lengthSeconds > 0) {
      save(why);
    }
  }

  /** Takes back what was saved. */
  void drop() {
    if (row != null) {
      batch.add(new DroppedSegmentRow(row.id()));
    }
  }

  private void save(SegmentEnd why) {
    boolean first = row == null;
    if (first) {
      row = new SegmentRow(nextId.getAsLong(), started);
    }
    row.setFigures(latest);
    row.setEnd(why);
    batch.addOnce(row);
    if (first) {
      saveWindows();
    }
    saveExcursions();
    savePoints();
    if (why != null) {
      saveTechnique();
    }
    batch.hurry();
    savedSeconds = latest.lengthSeconds;
  }

  private void saveWindows() {
    if (started.assignment.plan() == null) {
      return;
    }
    int number = 0;
    for (Window window : started.assignment.plan().pass().windows()) {
      batch.add(new WindowRow(row.id(), number++, window));
    }
  }

  private void saveExcursions() {
    for (ExcursionRecord excursion : excursions) {
      batch.add(new ExcursionRow(row.id(), savedExcursions++, excursion));
      technique.addExcursion(excursion);
    }
    excursions.clear();
  }

  private void savePoints() {
    if (points.size() > 0) {
      chunks.add(points.take());
    }
    for (byte[] chunk : chunks) {
      batch.add(new TraceRow(row.id(), savedPoints, chunk));
      savedPoints += chunk.length / TracePoints.POINT_BYTES;
      technique.addPoints(chunk);
    }
    chunks.clear();
  }

  private void saveTechnique() {
    TechniqueReading reading = technique.read(latest);
    if (reading != null) {
      batch.add(new TechniqueRow(row.id(), reading));
    }
  }
}
