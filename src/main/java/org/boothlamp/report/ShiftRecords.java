package org.boothlamp.report;

import java.util.List;
import java.util.function.UnaryOperator;

/**
 * All that the log holds for a span of time, each list in order of time. Immutable.
 *
 * @param runs segments
 * @param touches contacts that did not become segments
 * @param events everything else
 * @param untimed what may be of the span, for its time of day is not known; in order of the starts
 */
public record ShiftRecords(
    List<RunRecord> runs,
    List<TouchRecord> touches,
    List<EventRecord> events,
    List<UntimedStart> untimed) {

  public ShiftRecords {
    runs = List.copyOf(runs);
    touches = List.copyOf(touches);
    events = List.copyOf(events);
    untimed = List.copyOf(untimed);
  }

  /** Records whose times of day are all known. */
  public ShiftRecords(List<RunRecord> runs, List<TouchRecord> touches, List<EventRecord> events) {
    this(runs, touches, events, List.of());
  }

  /** The same with each run changed. */
  public ShiftRecords withRuns(UnaryOperator<RunRecord> change) {
    return new ShiftRecords(
        runs.stream().map(change).toList(),
        touches,
        events,
        untimed.stream()
            .map(start -> new UntimedStart(start.number(), start.records().withRuns(change)))
            .toList());
  }

  /** What a trainee did, and all events. */
  public ShiftRecords only(String trainee) {
    return new ShiftRecords(
        runs.stream().filter(run -> run.trainee().equals(trainee)).toList(),
        touches.stream().filter(touch -> touch.trainee().equals(trainee)).toList(),
        events,
        untimed.stream()
            .map(start -> new UntimedStart(start.number(), start.records().only(trainee)))
            .toList());
  }
}
