package org.boothlamp.lamp;

import java.util.List;
import org.boothlamp.judging.Signal;
import org.boothlamp.monitor.Worker;
import org.boothlamp.testing.HandTurnedClock;

/**
 * A refreshed lamp without threads: its rests turn the hands of its clock, so it steps exactly when
 * the thread would.
 */
final class HandDrivenLamp {

  private static final long NANOS_PER_MILLI = 1_000_000L;

  final HandTurnedClock clock;
  final RefreshedLamp lamp;

  /** The shortest rest an output's refresher asked for in the last step. */
  private long restNanos;

  HandDrivenLamp(HandTurnedClock clock, RedStyle redStyle, LampOutput... outputs) {
    this.clock = clock;
    LampPattern pattern = new LampPattern(redStyle);
    lamp = new RefreshedLamp(List.of(outputs), pattern, clock, this::rest);
    lamp.workers().forEach(Worker::start);
  }

  private void rest(long nanos) {
    restNanos = Math.min(restNanos, nanos);
  }

  void step() {
    restNanos = Long.MAX_VALUE;
    lamp.workers().forEach(Worker::step);
  }

  void pass(long millis) {
    long untilNanos = clock.nanoTime() + millis * NANOS_PER_MILLI;
    step();
    while (clock.nanoTime() < untilNanos) {
      clock.advanceNanos(Math.min(restNanos, untilNanos - clock.nanoTime()));
      step();
    }
  }

  void show(Signal signal) {
    lamp.show(signal, 1_000);
    step();
  }

  void keepShowing(Signal signal, long millis) {
    for (long k = 0; k < millis; k += 100) {
      show(signal);
      pass(100);
    }
  }
}
