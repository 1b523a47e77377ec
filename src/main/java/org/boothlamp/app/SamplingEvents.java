package org.boothlamp.app;

import org.boothlamp.boothlog.BoothLogWriter;
import org.boothlamp.monitor.EventKind;
import org.boothlamp.monitor.NanoClock;
import org.boothlamp.monitor.SampleSource;
import org.tinylog.Logger;

/**
 * Tells the log how evenly a source takes its pairs: 10 s after it first knows, every hour from
 * then on, and each spell in which it did not hold the rate it was asked for, with its start, its
 * end and the pairs that are missing. A source that does not measure this is never told of.
 *
 * <p>Looks once a second, on the thread "boothlog": the words are made where there is time for it.
 * Confined to that thread.
 */
final class SamplingEvents {

  private static final long LOOK_NANOS = 1_000_000_000L;
  private static final long FIRST_NANOS = 10_000_000_000L;
  private static final long HOUR_NANOS = 3_600_000_000_000L;

  /** Looks back to before a spell that takes up to 10 s to be seen. */
  private static final int LOOKS_BACK = 11;

  private final SampleSource source;
  private final BoothLogWriter writer;
  private final NanoClock clock;
  private final long[] lostPairs = new long[LOOKS_BACK];
  private final long bornNanos;
  private long looks;
  private boolean measuring;
  private long dueNanos;
  private boolean slow;
  private long lostPairsBefore;

  SamplingEvents(SampleSource source, BoothLogWriter writer, NanoClock clock) {
    this.source = source;
    this.writer = writer;
    this.clock = clock;
    bornNanos = clock.nanoTime();
  }

  /** Looks, if a second has passed. */
  void look() {
    long now = clock.nanoTime();
    if (source.measuresRate() && now - bornNanos >= looks * LOOK_NANOS) {
      looks = (now - bornNanos) / LOOK_NANOS + 1;
      lookAtRate();
      lookAtTime(now);
    }
  }

  private void lookAtRate() {
    String trouble = source.rateTrouble();
    if (trouble != null && !slow) {
      slow = true;
      lostPairsBefore = lostPairs[0];
      writer.noteBegin(EventKind.RATE_NOT_HELD, trouble);
      Logger.warn(trouble);
    } else if (trouble == null && slow) {
      finish();
      Logger.info(
          "{}: the spell in which it did not hold its rate is over", source.format().device());
    }
    System.arraycopy(lostPairs, 1, lostPairs, 0, LOOKS_BACK - 1);
    lostPairs[LOOKS_BACK - 1] = source.counters().lostPairs;
  }

  private void lookAtTime(long now) {
    if (measuring && now - dueNanos < 0) {
      return;
    }
    String words = source.performance();
    if (words == null) {
      return;
    }
    if (measuring) {
      writer.note(EventKind.SAMPLING, words);
    }
    dueNanos = now + (measuring ? HOUR_NANOS : FIRST_NANOS);
    measuring = true;
  }

  /** Ends a spell that lasts to the end. */
  void finish() {
    if (slow) {
      slow = false;
      writer.noteEnd(EventKind.RATE_NOT_HELD, source.counters().lostPairs - lostPairsBefore);
    }
  }
}
