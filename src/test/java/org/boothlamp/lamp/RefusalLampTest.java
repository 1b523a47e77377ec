package org.boothlamp.lamp;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import org.boothlamp.judging.Signal;
import org.boothlamp.monitor.Lamp;
import org.boothlamp.testing.HandTurnedClock;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

class RefusalLampTest {

  private final List<Signal> shown = new ArrayList<>();
  private boolean closed;
  private final HandTurnedClock clock = new HandTurnedClock();
  private final RefusalLamp lamp =
      new RefusalLamp(
          new Lamp() {
            @Override
            public void show(Signal signal, long monotonicNanos) {
              shown.add(signal);
            }

            @Override
            public void close() {
              closed = true;
            }
          },
          clock);

  private Signal show(Signal signal) {
    lamp.show(signal, 0);
    return shown.get(shown.size() - 1);
  }

  @Test
  void shouldShowFaultForASecondInThePlaceOfIdle() {
    assertEquals(Signal.IDLE, show(Signal.IDLE));
    lamp.refuse();
    assertEquals(Signal.FAULT, show(Signal.IDLE));
    clock.advanceMillis(999);
    assertEquals(Signal.FAULT, show(Signal.IDLE));
    clock.advanceMillis(1);
    assertEquals(Signal.IDLE, show(Signal.IDLE));
  }

  @ParameterizedTest
  @EnumSource(mode = EnumSource.Mode.EXCLUDE, names = "IDLE")
  void shouldHideNothingThatAnArcOrAFaultHasToSay(Signal signal) {
    lamp.refuse();
    assertEquals(signal, show(signal));
  }

  @Test
  void shouldGiveWayToAnArcThatStrikesMeanwhile() {
    lamp.refuse();
    show(Signal.IDLE);
    assertEquals(Signal.SETTLING, show(Signal.SETTLING));
    clock.advanceMillis(1_500);
    assertEquals(Signal.IDLE, show(Signal.IDLE));
  }

  @Test
  void shouldCloseTheLampBehindIt() {
    lamp.close();
    assertTrue(closed);
  }
}
