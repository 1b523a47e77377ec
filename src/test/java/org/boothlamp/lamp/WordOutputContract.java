package org.boothlamp.lamp;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.boothlamp.judging.Signal;

/** The contract for outputs that tell the signal itself, not only its lights. */
abstract class WordOutputContract extends RefreshedLampContract {

  /** The signal told last; dark if none was. */
  protected abstract Signal told();

  @Override
  protected final void assertShowing(Signal signal) {
    assertEquals(signal, told());
  }

  @Override
  protected final void assertInFaultByItself() {
    assertEquals(Signal.FAULT, told());
  }

  @Override
  protected final void assertDarkForGood() {
    assertEquals(Signal.DARK, told());
  }
}
