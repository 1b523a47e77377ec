package org.boothlamp.lamp;

import java.io.IOException;
import org.boothlamp.monitor.Lamp;
import org.boothlamp.testing.HandTurnedClock;
import org.boothlamp.testing.LampContract;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;

/** The contract for one output behind a refreshed lamp that is driven by hand. */
abstract class RefreshedLampContract extends LampContract {

  private HandDrivenLamp driven;

  /** Opens the output; the clock is the lamp's. */
  protected abstract LampOutput open(HandTurnedClock clock) throws IOException;

  @BeforeEach
  final void openLamp() throws IOException {
    HandTurnedClock clock = new HandTurnedClock();
    driven = new HandDrivenLamp(clock, RedStyle.STEADY, open(clock));
    driven.step();
  }

  @AfterEach
  final void closeLamp() {
    driven.lamp.close();
  }

  @Override
  protected final Lamp lamp() {
    return driven.lamp;
  }

  @Override
  protected final void pass(long millis) {
    driven.pass(millis);
  }
}
