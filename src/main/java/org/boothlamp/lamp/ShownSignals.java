package org.boothlamp.lamp;

import java.util.concurrent.atomic.AtomicLongArray;
import java.util.concurrent.atomic.AtomicReferenceArray;
import org.boothlamp.judging.Signal;

/**
 * Hands shown signals from the thread that shows to the thread that refreshes, in order. Fixed ring
 * of {@value #CAPACITY}; nothing is created and nobody waits. A reader that falls behind loses the
 * oldest and keeps the newest: an old signal is worth nothing. One writing and one reading thread.
 */
final class ShownSignals {

  /** Signals kept for a slow reader: 6 s at one every 0.1 s. */
  static final int CAPACITY = 64;

  private final AtomicReferenceArray<Signal> signals = new AtomicReferenceArray<>(CAPACITY);
  private final AtomicLongArray nanos = new AtomicLongArray(CAPACITY);

  /** Signals put so far; moved on after the slot is filled. */
  private volatile long put;

  private volatile long skipped;

  private long taken;
  private Signal signal = Signal.DARK;
  private long samplesNanos;

  /** Adds a signal; from the writing thread. */
  void put(Signal shown, long shownNanos) {
    long at = put;
    signals.set((int) (at % CAPACITY), shown);
    nanos.set((int) (at % CAPACITY), shownNanos);
    put = at + 1;
  }

  /**
   * Goes on to the next signal; from the reading thread.
   *
   * @return false if there is none, which leaves the current one
   */
  boolean next() {
    while (taken < put) {
      Signal nextSignal = signals.get((int) (taken % CAPACITY));
      long nextNanos = nanos.get((int) (taken % CAPACITY));
      // The slot at "put" may be half overwritten, so it must not be the one that was read.
      if (put - taken < CAPACITY) {
        signal = nextSignal;
        samplesNanos = nextNanos;
        taken++;
        return true;
      }
      skipOverwritten();
    }
    return false;
  }

  private void skipOverwritten() {
    long oldest = put - CAPACITY + 1;
    skipped += oldest - taken;
    taken = oldest;
  }

  /** The current signal; dark before the first. */
  Signal signal() {
    return signal;
  }

  /** Time of the samples behind the current signal. */
  long samplesNanos() {
    return samplesNanos;
  }

  /** Signals overwritten before they were read. Any thread. */
  long skipped() {
    return skipped;
  }
}
