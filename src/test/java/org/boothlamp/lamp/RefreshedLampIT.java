package org.boothlamp.lamp;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.locks.LockSupport;
import java.util.function.BooleanSupplier;
import org.boothlamp.judging.Signal;
import org.boothlamp.monitor.NanoClock;
import org.boothlamp.testing.RecordingLampOutput;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** The lamp with its real threads and the real clock. */
@Tag("quiet")
class RefreshedLampIT {

  private static final long PATIENCE_NANOS = 20_000_000_000L;
  private static final LampPattern PATTERN = new LampPattern(RedStyle.STEADY);

  private final RecordingLampOutput output = new RecordingLampOutput(NanoClock.SYSTEM);
  private final CountDownLatch release = new CountDownLatch(1);
  private RefreshedLamp lamp;

  private void start(LampOutput... outputs) {
    lamp = new RefreshedLamp(List.of(outputs), PATTERN, NanoClock.SYSTEM);
    lamp.start();
  }

  @AfterEach
  void closeLamp() {
    release.countDown();
    lamp.close();
  }

  private static void await(BooleanSupplier condition) {
    long giveUpNanos = System.nanoTime() + PATIENCE_NANOS;
    while (!condition.getAsBoolean()) {
      assertTrue(System.nanoTime() - giveUpNanos < 0, "waited in vain");
      LockSupport.parkNanos(20_000);
    }
  }

  private boolean isShowing(Signal signal) {
    return !output.applied().isEmpty() && output.last().signal() == signal;
  }

  private static Thread threadCalled(String name) {
    return Thread.getAllStackTraces().keySet().stream()
        .filter(thread -> thread.getName().equals(name))
        .findAny()
        .orElseThrow();
  }

  @Test
  void shouldBringEveryChangeToTheOutputInOrder() {
    start(output);
    List<Signal> shown = new ArrayList<>();
    for (int k = 0; k < 1_000; k++) {
      Signal signal = Signal.ofCode(1 + k % 6);
      shown.add(signal);
      // Long enough for the lamp's thread to rest again, as it does between real changes.
      LockSupport.parkNanos(1_000_000);
      lamp.show(signal, System.nanoTime());
      await(() -> isShowing(signal));
    }
    List<RecordingLampOutput.Applied> changes = withoutDarkStart(output.changes());
    assertEquals(shown, changes.stream().map(RecordingLampOutput.Applied::signal).toList());
    printLatencies(changes);
  }

  private static List<RecordingLampOutput.Applied> withoutDarkStart(
      List<RecordingLampOutput.Applied> changes) {
    return changes.get(0).signal() == Signal.DARK ? changes.subList(1, changes.size()) : changes;
  }

  /** A measurement, not a check: a busy machine may be as late as it likes. */
  private static void printLatencies(List<RecordingLampOutput.Applied> changes) {
    long[] nanos =
        changes.stream().mapToLong(c -> c.appliedNanos() - c.samplesNanos()).sorted().toArray();
    System.out.printf(
        Locale.ROOT,
        "lamp, show() to output, %d changes: p50 %.3f ms, p99 %.3f ms, worst %.3f ms%n",
        nanos.length,
        nanos[nanos.length / 2] / 1e6,
        nanos[nanos.length * 99 / 100] / 1e6,
        Arrays.stream(nanos).max().orElseThrow() / 1e6);
  }

  @Test
  void shouldGoDarkAndEndItsThreadWhenClosed() {
    start(output);
    Thread thread = threadCalled("lamp");
    lamp.show(Signal.GREEN, 1);
    lamp.close();
    lamp.close();
    assertFalse(thread.isAlive());
    assertTrue(isShowing(Signal.DARK));
    assertTrue(output.signals().contains(Signal.GREEN));
    assertEquals(1, output.closes());
  }

  @Test
  void shouldShowFaultByItselfWhenNothingIsShown() {
    start(output);
    lamp.show(Signal.GREEN, 1);
    await(() -> isShowing(Signal.GREEN));
    await(() -> isShowing(Signal.FAULT));
  }

  @Test
  void shouldGoOnAfterAnErrorAndAnInterrupt() {
    start(output);
    output.failWith(new StackOverflowError("as a test"));
    lamp.show(Signal.GREEN, 1);
    await(() -> lamp.failures() > 0);
    threadCalled("lamp").interrupt();
    output.failWith(null);
    lamp.show(Signal.RED, 2);
    await(() -> isShowing(Signal.RED));
  }

  @Test
  void shouldNotLetAStuckOutputHoldUpTheOthersNorTheCaller() {
    start(new StuckOutput(release), output);
    for (Signal signal : List.of(Signal.GREEN, Signal.AMBER, Signal.RED)) {
      lamp.show(signal, 1);
      await(() -> isShowing(signal));
    }
    for (int k = 0; k < 1_000; k++) {
      lamp.show(Signal.RED, k);
    }
    assertTrue(isShowing(Signal.RED));
  }

  /** Waits in apply until it is let go, as a screen nobody reads or a disk that stalls. */
  private record StuckOutput(CountDownLatch release) implements LampOutput {

    @Override
    public String name() {
      return "stuck output";
    }

    @Override
    public void apply(Signal signal, int lights, long samplesNanos) {
      try {
        release.await();
      } catch (InterruptedException interrupted) {
        throw new IllegalStateException(interrupted);
      }
    }

    @Override
    public void close() {
      release.countDown();
    }
  }
}
