package org.boothlamp.boothlog;

import java.util.EnumMap;
import java.util.Map;
import org.boothlamp.monitor.EventKind;
import org.boothlamp.monitor.LogEntry;
import org.boothlamp.monitor.SegmentEnd;

/**
 * Turns the sampler's entries into rows of the batch. Where entries were lost on the way, it keeps
 * what can be kept: a segment whose end is missing ends with its last figures, and entries whose
 * segment never began are counted. Confined to one thread.
 */
final class EntrySorter {

  private final LogBatch batch;
  private final LogStart start;
  private final Map<EventKind, EventRow> openEvents = new EnumMap<>(EventKind.class);
  private RunningSegment running;
  private long strayEntries;

  EntrySorter(LogBatch batch, LogStart start) {
    this.batch = batch;
    this.start = start;
  }

  void accept(LogEntry entry) {
    switch (entry.kind) {
      case SEGMENT_STARTED -> beginSegment(entry);
      case TRACE_POINT, EXCURSION, SEGMENT_PROGRESS, SEGMENT_ENDED, SEGMENT_DROPPED ->
          acceptOfSegment(entry);
      case TOUCH -> batch.add(TouchRow.of(start.nextTouch(), entry));
      case EVENT_STARTED -> beginEvent(entry);
      case EVENT_ENDED -> endEvent(entry);
    }
  }

  private void beginSegment(LogEntry entry) {
    endRunning(SegmentEnd.GAP);
    running = new RunningSegment(entry, batch, start::nextSegment);
    batch.hold(true);
  }

  private void acceptOfSegment(LogEntry entry) {
    if (running == null) {
      strayEntries++;
      return;
    }
    switch (entry.kind) {
      case TRACE_POINT -> running.addPoint(entry);
      case EXCURSION -> running.addExcursion(entry);
      case SEGMENT_PROGRESS -> running.progress(entry.figures);
      case SEGMENT_DROPPED -> {
        running.drop();
        forgetRunning();
      }
      default -> {
        running.end(entry.figures, entry.end);
        forgetRunning();
      }
    }
  }

  /** Ends a segment of which no more will be heard. */
  void endRunning(SegmentEnd why) {
    if (running != null) {
      running.endAsKnown(why);
      forgetRunning();
    }
  }

  private void forgetRunning() {
    running = null;
    batch.hold(false);
  }

  /** True while a segment has begun and not ended. */
  boolean isSegmentRunning() {
    return running != null;
  }

  private void beginEvent(LogEntry entry) {
    EventRow row = eventRow(entry.event, Moment.of(entry), Double.NaN, 0, "");
    openEvents.put(entry.event, row);
    batch.add(row);
  }

  private void endEvent(LogEntry entry) {
    EventRow open = openEvents.remove(entry.event);
    batch.add(
        open == null
            ? eventRow(entry.event, Moment.of(entry), entry.lengthSeconds, entry.count, "")
            : open.ended(entry.lengthSeconds, entry.count));
  }

  /** Adds an event that the sampler does not know of. */
  void addEvent(EventKind kind, Moment moment, double lengthSeconds, long count, String detail) {
    batch.add(eventRow(kind, moment, lengthSeconds, count, detail));
  }

  /** Begins an event that the sampler does not know of. */
  void beginEvent(EventKind kind, Moment moment, String detail) {
    EventRow row = eventRow(kind, moment, Double.NaN, 0, detail);
    openEvents.put(kind, row);
    batch.add(row);
  }

  /** Ends such an event; does nothing if none is open. */
  void endEvent(EventKind kind, Moment moment, long count) {
    EventRow open = openEvents.remove(kind);
    if (open != null) {
      batch.add(open.ended(open.moment().secondsUntil(moment), count));
    }
  }

  private EventRow eventRow(
      EventKind kind, Moment moment, double lengthSeconds, long count, String detail) {
    return new EventRow(start.nextEvent(), kind, moment, lengthSeconds, count, detail);
  }

  /** Entries of segments whose start was lost. */
  long strayEntries() {
    return strayEntries;
  }
}
