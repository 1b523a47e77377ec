package org.boothlamp.lamp;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.boothlamp.judging.Signal;

/**
 * The contract for outputs that have three lights and nothing else: a signal is told by watching.
 */
abstract class LightsOutputContract extends RefreshedLampContract {

  /** The lights lit now, bits of {@link LampPattern}. */
  protected abstract int lights();

  @Override
  protected final void assertShowing(Signal signal) {
    switch (signal) {
      case DARK -> assertSteady(0, signal);
      case IDLE -> assertIdle();
      case SETTLING -> assertSteady(LampPattern.AMBER + LampPattern.GREEN, signal);
      case GREEN -> assertSteady(LampPattern.GREEN, signal);
      case AMBER -> assertSteady(LampPattern.AMBER, signal);
      case RED -> assertSteady(LampPattern.RED, signal);
      case FAULT -> assertFault();
    }
  }

  private void assertSteady(int expectedLights, Signal signal) {
    for (int k = 0; k < 7; k++) {
      assertEquals(expectedLights, lights());
      keepShowing(signal, 100);
    }
  }

  private void assertIdle() {
    assertEquals(LampPattern.GREEN, lights());
    keepShowing(Signal.IDLE, 200);
    assertEquals(0, lights());
    keepShowing(Signal.IDLE, 3_800);
    assertEquals(LampPattern.GREEN, lights());
  }

  private void assertFault() {
    int atFirst = lights();
    keepShowing(Signal.FAULT, 500);
    assertEquals(LampPattern.RED + LampPattern.AMBER, atFirst + lights());
  }

  @Override
  protected final void assertInFaultByItself() {
    int atFirst = lights();
    pass(500);
    assertEquals(LampPattern.RED + LampPattern.AMBER, atFirst + lights());
  }

  @Override
  protected final void assertDarkForGood() {
    assertEquals(0, lights());
    pass(1_000);
    assertEquals(0, lights());
  }
}
