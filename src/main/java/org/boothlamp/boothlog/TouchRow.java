package org.boothlamp.boothlog;

import java.sql.SQLException;
import org.boothlamp.monitor.LogEntry;

/**
 * A contact that did not become a segment. Immutable.
 *
 * @param id which touch of this start, from 1
 * @param monotonicNanos start on the source's clock
 * @param trainee trainee code, or empty
 * @param wallMillis time of day at the start
 * @param startSeconds start, seconds since the source's first pair
 * @param lengthSeconds length
 * @param stuck true for more than 0.5 s at short-circuit volts
 */
record TouchRow(
    long id,
    String trainee,
    long wallMillis,
    long monotonicNanos,
    double startSeconds,
    double lengthSeconds,
    boolean stuck)
    implements LogRow {

  private static final String INSERT =
      "INSERT INTO touch (id, boot, trainee, start_wall_ms, start_mono_ns, start_s, length_s, stuck)"
          + " VALUES (?, ?, ?, ?, ?, ?, ?, ?) ON CONFLICT (id) DO NOTHING";

  static TouchRow of(long id, LogEntry entry) {
    return new TouchRow(
        id,
        entry.assignment.trainee(),
        entry.wallMillis,
        entry.monotonicNanos,
        entry.startSeconds,
        entry.lengthSeconds,
        entry.stuck);
  }

  @Override
  public void write(LogConnection log, LogStart start) throws SQLException {
    log.bind(INSERT)
        .whole(start.touch(id))
        .whole(start.boot())
        .text(trainee)
        .whole(start.wallMillis(wallMillis, monotonicNanos))
        .whole(monotonicNanos)
        .real(startSeconds)
        .real(lengthSeconds)
        .flag(stuck)
        .run();
  }
}
