package org.boothlamp.boothlog;

import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import org.boothlamp.report.EventRecord;
import org.boothlamp.report.ReplayChoice;
import org.boothlamp.report.RunRecord;
import org.boothlamp.report.WeldReplay;
import org.boothlamp.report.WeldTrace;

/** Reads one run with its trace and the faults around it. To be run inside one transaction. */
final class ReplayReading {

  private static final String FAULTS =
      "SELECT e.word, e.start_wall_ms, e.start_s, e.length_s FROM event e"
          + " WHERE e.boot = (SELECT boot FROM segment WHERE id = ?) AND e.fault AND e.start_s IS NOT NULL"
          + " ORDER BY e.start_s";

  private static final String LIKE =
      "SELECT s.id, s.trainee, s.start_wall_ms, s.length_s, coalesce((SELECT r.marked"
          + " FROM reference_weld r WHERE r.segment_id = s.id ORDER BY r.id DESC LIMIT 1), 0) AS mark"
          + " FROM segment s WHERE s.procedure_id = ? AND s.pass = ? AND s.id <> ?"
          + " AND s.end_word IS NOT NULL ORDER BY mark DESC, s.start_wall_ms DESC, s.id DESC LIMIT ?";

  private ReplayReading() {}

  /** Other runs of the same pass: reference welds first, then the latest. */
  static List<ReplayChoice> choices(LogConnection log, RunRecord run, int most)
      throws SQLException {
    List<ReplayChoice> choices = new ArrayList<>();
    try (Columns row =
        log.bind(LIKE)
            .text(run.procedureId())
            .text(run.pass())
            .whole(run.id())
            .whole(most)
            .rows()) {
      while (row.next()) {
        choices.add(new ReplayChoice(row.whole(), row.text(), row.whole(), row.real(), row.flag()));
      }
    }
    return choices;
  }

  /** A run to be looked at again, or null if there is no such segment. */
  static WeldReplay read(LogConnection log, long segmentId) throws SQLException {
    RunRecord run = ShiftReading.run(log, segmentId);
    return run == null
        ? null
        : new WeldReplay(run, trace(TraceReading.read(log, segmentId)), faults(log, segmentId));
  }

  private static List<EventRecord> faults(LogConnection log, long segmentId) throws SQLException {
    List<EventRecord> faults = new ArrayList<>();
    try (Columns row = log.bind(FAULTS).whole(segmentId).rows()) {
      while (row.next()) {
        faults.add(new EventRecord(row.text(), true, row.whole(), row.real(), row.real(), 0, ""));
      }
    }
    return faults;
  }

  private static WeldTrace trace(SegmentTrace stored) {
    return new WeldTrace(
        stored.meanAmps,
        stored.lowestAmps,
        stored.highestAmps,
        stored.meanVolts,
        stored.lowestVolts,
        stored.highestVolts,
        stored.signals);
  }
}
