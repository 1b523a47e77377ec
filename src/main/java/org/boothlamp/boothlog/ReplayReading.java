package org.boothlamp.boothlog;

import java.sql.SQLException;
import java.util.List;
import org.boothlamp.report.EventRecord;
import org.boothlamp.report.RunRecord;
import org.boothlamp.report.WeldReplay;
import org.boothlamp.report.WeldTrace;

/** Reads one run with its trace and the faults around it. To be run inside one transaction. */
final class ReplayReading {

  /** A fault may have begun so long before the run. */
  private static final long FAULT_MILLIS_BEFORE = 12 * 3_600_000L;

  private ReplayReading() {}

  /** A run to be looked at again, or null if there is no such segment. */
  static WeldReplay read(LogConnection log, long segmentId) throws SQLException {
    SegmentKey key = SegmentKey.read(log, segmentId);
    if (key == null) {
      return null;
    }
    RunRecord run = run(log, segmentId, key.startWallMillis());
    return new WeldReplay(run, trace(TraceReading.read(log, segmentId)), faults(log, run));
  }

  private static RunRecord run(LogConnection log, long segmentId, long startWallMillis)
      throws SQLException {
    return new ShiftReading(log, startWallMillis, startWallMillis + 1)
        .runs().stream().filter(run -> run.id() == segmentId).findFirst().orElseThrow();
  }

  private static List<EventRecord> faults(LogConnection log, RunRecord run) throws SQLException {
    long from = run.startWallMillis() - FAULT_MILLIS_BEFORE;
    double length = Double.isNaN(run.lengthSeconds()) ? 0 : run.lengthSeconds();
    long until = run.startWallMillis() + (long) Math.ceil(1_000 * length) + 1;
    return new ShiftReading(log, from, until).events().stream().filter(EventRecord::fault).toList();
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
