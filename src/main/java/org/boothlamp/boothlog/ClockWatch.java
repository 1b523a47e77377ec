package org.boothlamp.boothlog;

import java.time.Instant;
import java.time.temporal.ChronoUnit;
import org.boothlamp.monitor.BoothClock;
import org.boothlamp.monitor.ClockTrust;
import org.boothlamp.monitor.EventKind;

/**
 * Keeps the booth's clock right. The machine's clock is compared with the monotonic one each
 * second:
 *
 * <ul>
 *   <li>the first time it can be trusted, and whenever it differs while it can be, the booth's
 *       clock and all rows of this start follow it;
 *   <li>before that they follow every jump, for whoever made it knew no less than the clock did;
 *   <li>afterwards, a jump of a clock that cannot be trusted (somebody set it by hand) is told and
 *       not followed.
 * </ul>
 *
 * <p>Confined to one thread.
 */
final class ClockWatch {

  /** Nothing was logged before this program existed: 2026-01-01T00:00Z. */
  static final long EARLIEST_WALL_MILLIS = 1_767_225_600_000L;

  private static final long POLL_NANOS = 1_000_000_000L;

  /** Less is no jump, ms. */
  private static final long JUMP_MILLIS = 1_000;

  private final LogClocks clocks;
  private final LogStart start;
  private final LogBatch batch;
  private final EntrySorter sorter;
  private final BoothClock kept;
  private final ClockTrust trust;
  private final String machineBoot;
  private long nextPollNanos;
  private long toldOffsetMillis;

  ClockWatch(
      LogClocks clocks, LogStart start, LogBatch batch, EntrySorter sorter, String machineBoot) {
    this.clocks = clocks;
    this.start = start;
    this.batch = batch;
    this.sorter = sorter;
    this.machineBoot = machineBoot;
    kept = clocks.kept();
    trust = clocks.trust();
    nextPollNanos = clocks.nano().nanoTime();
  }

  /** Looks, once a second at most. */
  void poll() {
    long now = clocks.nano().nanoTime();
    if (kept == null || now - nextPollNanos < 0) {
      return;
    }
    nextPollNanos = now + POLL_NANOS;
    look(now);
  }

  private void look(long nowNanos) {
    long machineBase = kept.machineBaseMillis();
    long offset = machineBase - kept.baseMillis();
    boolean jumped = Math.abs(offset) > JUMP_MILLIS;
    boolean trusted =
        machineBase + nowNanos / 1_000_000 >= EARLIEST_WALL_MILLIS && trust.isTrusted();
    if (trusted && !start.isClockTrusted()) {
      start.trustClock();
      follow(jumped ? machineBase : kept.baseMillis());
    } else if (jumped && (trusted || !start.isClockTrusted())) {
      follow(machineBase);
    } else if (jumped && Math.abs(offset - toldOffsetMillis) > JUMP_MILLIS) {
      toldOffsetMillis = offset;
      tell(
          EventKind.CLOCK_STEPPED, clocks.now(), "moved by " + offset / 1_000 + " s, not followed");
    }
  }

  private void follow(long newBase) {
    Moment before = clocks.now();
    long oldBase = kept.baseMillis();
    kept.setBaseMillis(newBase);
    toldOffsetMillis = 0;
    batch.add(
        new ClockCorrectionRow(
            machineBoot, before.monotonicNanos(), oldBase, newBase, start.isClockTrusted()));
    if (newBase != oldBase) {
      Moment after = clocks.now();
      tell(
          EventKind.CLOCK_SET,
          after,
          "from " + words(before.wallMillis()) + " to " + words(after.wallMillis()));
    }
  }

  private void tell(EventKind kind, Moment moment, String detail) {
    sorter.addEvent(kind, moment, 0, 0, detail);
  }

  private static String words(long wallMillis) {
    return Instant.ofEpochMilli(wallMillis).truncatedTo(ChronoUnit.SECONDS).toString();
  }
}
