package org.boothlamp.testing;

import static org.junit.jupiter.api.Assertions.assertEquals;

import com.sun.management.ThreadMXBean;
import java.lang.management.ManagementFactory;
import org.boothlamp.judging.Signal;
import org.boothlamp.monitor.Lamp;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** What every lamp must do, whatever it is made of. */
public abstract class LampContract {

  private static final long REFRESH_MILLIS = 100;

  private long samplesNanos = 1_000;

  /** The lamp, driven and dark; the same one through a test. */
  protected abstract Lamp lamp();

  /** Lets time pass, and the lamp do what it does by itself meanwhile. */
  protected abstract void pass(long millis);

  /**
   * Fails unless the lamp shows this signal. It was shown a moment ago; the check may go on showing
   * it with {@link #keepShowing}.
   */
  protected abstract void assertShowing(Signal signal);

  /** Shows a signal and lets it arrive. */
  protected final void show(Signal signal) {
    samplesNanos += 1_000;
    lamp().show(signal, samplesNanos);
    pass(1);
  }

  /** Shows a signal every 0.1 s, as the monitor does. */
  protected final void keepShowing(Signal signal, long millis) {
    for (long passed = 0; passed < millis; passed += REFRESH_MILLIS) {
      show(signal);
      pass(REFRESH_MILLIS - 1);
    }
  }

  @ParameterizedTest
  @EnumSource
  void shouldShowEachSignal(Signal signal) {
    show(signal);
    assertShowing(signal);
  }

  @Test
  void shouldShowOneChangeAfterTheOther() {
    for (Signal from : Signal.values()) {
      for (Signal to : Signal.values()) {
        show(from);
        assertShowing(from);
        show(to);
        assertShowing(to);
      }
    }
  }

  @Test
  void shouldShowTheLastOfChangesInOneInstant() {
    lamp().show(Signal.GREEN, 1);
    lamp().show(Signal.RED, 2);
    lamp().show(Signal.AMBER, 3);
    pass(1);
    assertShowing(Signal.AMBER);
  }

  @ParameterizedTest
  @EnumSource(
      value = Signal.class,
      names = {"DARK", "SETTLING", "GREEN", "AMBER", "RED"})
  void shouldKeepASignalThatIsShownAgain(Signal signal) {
    keepShowing(signal, 3_000);
    assertShowing(signal);
  }

  @Test
  void shouldBeInFaultByItselfWhenNothingWasEverShown() {
    pass(900);
    assertInFaultByItself();
  }

  @ParameterizedTest
  @EnumSource
  void shouldBeInFaultByItselfWithinASecondWhenNothingIsShownAnyMore(Signal signal) {
    show(signal);
    pass(900);
    assertInFaultByItself();
  }

  /** Fails unless the lamp is in fault, which nobody told it; must not show anything. */
  protected abstract void assertInFaultByItself();

  @Test
  void shouldComeOutOfItsOwnFaultWhenASignalIsShown() {
    show(Signal.GREEN);
    pass(900);
    show(Signal.GREEN);
    assertShowing(Signal.GREEN);
  }

  @ParameterizedTest
  @EnumSource
  void shouldBeDarkAfterClose(Signal signal) {
    show(signal);
    lamp().close();
    assertDarkForGood();
  }

  @Test
  void shouldStayDarkWhenClosedAgainOrShownAfterClose() {
    show(Signal.GREEN);
    lamp().close();
    lamp().close();
    lamp().show(Signal.RED, 2_000);
    assertDarkForGood();
  }

  /** Fails unless the lamp is dark now; it is closed. */
  protected abstract void assertDarkForGood();

  @Test
  void showShouldCreateNothing() {
    ThreadMXBean threads = (ThreadMXBean) ManagementFactory.getThreadMXBean();
    int calls = 100_000;
    showManyTimes(calls);
    long before = threads.getCurrentThreadAllocatedBytes();
    showManyTimes(calls);
    long bytes = threads.getCurrentThreadAllocatedBytes() - before;
    assertEquals(0, bytes / calls, "bytes a call; all together " + bytes);
  }

  private void showManyTimes(int calls) {
    for (int k = 0; k < calls; k++) {
      lamp().show(k % 2 == 0 ? Signal.GREEN : Signal.RED, k);
    }
  }
}
