package org.boothlamp.boothlog;

import java.sql.SQLException;
import org.boothlamp.monitor.EventKind;

/**
 * Something that happened to the booth. Immutable; the row of an event that has begun is written
 * again when it ends.
 *
 * @param id which event of this start, from 1
 * @param kind what happened
 * @param moment when it began
 * @param lengthSeconds how long it lasted; 0 for a moment, NaN while it lasts
 * @param count how many, where the event counts something; else 0
 * @param detail more in words, may be empty
 */
record EventRow(
    long id, EventKind kind, Moment moment, double lengthSeconds, long count, String detail)
    implements LogRow {

  private static final String SAVE =
      "INSERT INTO event (id, boot, word, fault, start_wall_ms, start_mono_ns, start_s, length_s,"
          + " count, detail) VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?) ON CONFLICT (id)"
          + " DO UPDATE SET length_s = excluded.length_s, count = excluded.count";

  /** The same event, now that its end is known. */
  EventRow ended(double seconds, long endCount) {
    return new EventRow(id, kind, moment, seconds, endCount, detail);
  }

  @Override
  public void write(LogConnection log, LogStart start) throws SQLException {
    save(
        log,
        start.event(id),
        start.boot(),
        start.wallMillis(moment.wallMillis(), moment.monotonicNanos()));
  }

  /** Writes it under a start and with a time of day of its own. */
  void save(LogConnection log, long rowNumber, long boot, long wallMillis) throws SQLException {
    log.bind(SAVE)
        .whole(rowNumber)
        .whole(boot)
        .text(kind.word())
        .flag(kind.isFault())
        .whole(wallMillis)
        .whole(moment.monotonicNanos())
        .real(moment.seconds())
        .real(lengthSeconds)
        .whole(count)
        .text(detail)
        .run();
  }
}
