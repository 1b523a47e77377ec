package org.boothlamp.lamp;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeFalse;

import com.pi4j.boardinfo.util.BoardInfoHelper;
import java.io.IOException;
import java.nio.file.Path;
import java.util.OptionalInt;
import org.boothlamp.judging.Signal;
import org.boothlamp.testing.HandTurnedClock;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

class GpioLampTest {

  private static final int RED_PIN = 17;
  private static final int AMBER_PIN = 27;
  private static final int GREEN_PIN = 22;
  private static final int HEARTBEAT_PIN = 5;

  private final MockPins pins = new MockPins();

  private static LampPins pins(ActiveLevel active) {
    return new LampPins(RED_PIN, AMBER_PIN, GREEN_PIN, OptionalInt.of(HEARTBEAT_PIN), active);
  }

  private GpioLamp gpio(ActiveLevel active) throws IOException {
    return GpioLamp.open(pins, "mock pins", pins(active), "free the pin");
  }

  @ParameterizedTest
  @EnumSource
  void shouldHoldEveryPinInactiveBeforeTheFirstSignalAndAfterClose(ActiveLevel active)
      throws IOException {
    boolean inactive = active == ActiveLevel.LOW;
    GpioLamp lamp = gpio(active);
    assertAllPins(inactive);
    lamp.apply(Signal.FAULT, LampPattern.RED + LampPattern.AMBER + LampPattern.GREEN, 0);
    lamp.beat();
    assertAllPins(!inactive);
    lamp.close();
    assertAllPins(inactive);
  }

  private void assertAllPins(boolean isHigh) {
    for (int pin : new int[] {RED_PIN, AMBER_PIN, GREEN_PIN, HEARTBEAT_PIN}) {
      assertEquals(isHigh, pins.isHigh(pin), "pin " + pin);
    }
  }

  @Test
  void shouldToggleTheHeartbeatWhileSomethingIsShownAndNotAfter() throws IOException {
    HandDrivenLamp driven =
        new HandDrivenLamp(new HandTurnedClock(), RedStyle.STEADY, gpio(ActiveLevel.HIGH));
    int before = pins.changes(HEARTBEAT_PIN);
    driven.keepShowing(Signal.GREEN, 2_000);
    assertEquals(before + 20, pins.changes(HEARTBEAT_PIN));
    driven.pass(2_000);
    assertEquals(before + 20, pins.changes(HEARTBEAT_PIN));
  }

  @Test
  void shouldDoWithoutAHeartbeat() throws IOException {
    LampPins noHeartbeat =
        new LampPins(RED_PIN, AMBER_PIN, GREEN_PIN, OptionalInt.empty(), ActiveLevel.HIGH);
    try (GpioLamp lamp = GpioLamp.open(pins, "mock pins", noHeartbeat, "")) {
      lamp.beat();
      lamp.apply(Signal.GREEN, LampPattern.GREEN, 0);
      assertTrue(pins.isHigh(GREEN_PIN));
      assertEquals(0, pins.changes(HEARTBEAT_PIN));
    }
  }

  @Test
  void shouldPutGreenOutEvenIfRedIsGone() throws IOException {
    GpioLamp lamp = gpio(ActiveLevel.HIGH);
    lamp.apply(Signal.GREEN, LampPattern.GREEN, 0);
    pins.breakPin(RED_PIN);
    IllegalStateException failure =
        assertThrows(IllegalStateException.class, () -> lamp.apply(Signal.RED, LampPattern.RED, 0));
    assertEquals("pin 17 is gone", failure.getMessage());
    assertFalse(pins.isHigh(GREEN_PIN));
  }

  @Test
  void shouldPutRightWhatWasDisturbedFromOutsideWithinHalfASecond() throws IOException {
    HandDrivenLamp driven =
        new HandDrivenLamp(new HandTurnedClock(), RedStyle.STEADY, gpio(ActiveLevel.HIGH));
    driven.keepShowing(Signal.RED, 300);
    pins.disturb(GREEN_PIN, true);
    driven.keepShowing(Signal.RED, 500);
    assertFalse(pins.isHigh(GREEN_PIN));
  }

  @Test
  void shouldWriteAPinThatFailedAgainAtTheNextTry() throws IOException {
    GpioLamp lamp = gpio(ActiveLevel.HIGH);
    lamp.apply(Signal.GREEN, LampPattern.GREEN, 0);
    pins.breakPin(GREEN_PIN);
    assertThrows(IllegalStateException.class, () -> lamp.apply(Signal.RED, LampPattern.RED, 0));
    pins.mendPin(GREEN_PIN);
    lamp.apply(Signal.RED, LampPattern.RED, 0);
    assertFalse(pins.isHigh(GREEN_PIN));
  }

  @Test
  void shouldSayWhichPinsCannotBeOpenedAndWhy() {
    pins.breakPin(AMBER_PIN);
    LampUnavailableException refused =
        assertThrows(LampUnavailableException.class, () -> gpio(ActiveLevel.HIGH));
    assertTrue(refused.getMessage().startsWith("the lamp's mock pins cannot be opened: "));
    assertTrue(refused.getMessage().contains("pin 27 is held by another program"));
    assertTrue(refused.getMessage().endsWith("; free the pin"));
    assertFalse(pins.isHigh(RED_PIN), "what was opened before is inactive");
  }

  @Test
  void shouldSayThatTheFolderOffersNoPins() {
    Path folder = Path.of("no", "such", "folder");
    LampUnavailableException refused =
        assertThrows(
            LampUnavailableException.class,
            () -> GpioLamp.openLinuxFs(folder, pins(ActiveLevel.HIGH)));
    assertTrue(refused.getMessage().contains(folder.resolve("export") + " is missing"));
    assertTrue(refused.getMessage().contains("red=17, amber=27, green=22, heartbeat=5"));
  }

  @Test
  void shouldSayThatTheBoardIsUnknown() {
    assumeFalse(BoardInfoHelper.runningOnRaspberryPi(), "this board is known");
    LampUnavailableException refused =
        assertThrows(
            LampUnavailableException.class, () -> GpioLamp.openGpiod(pins(ActiveLevel.HIGH)));
    assertTrue(refused.getMessage().contains("does not recognise this board; use linuxfs pins"));
  }

  @Nested
  class Contract extends LightsOutputContract {

    @Override
    protected LampOutput open(HandTurnedClock clock) throws IOException {
      return gpio(ActiveLevel.LOW);
    }

    @Override
    protected int lights() {
      return (pins.isHigh(RED_PIN) ? 0 : LampPattern.RED)
          + (pins.isHigh(AMBER_PIN) ? 0 : LampPattern.AMBER)
          + (pins.isHigh(GREEN_PIN) ? 0 : LampPattern.GREEN);
    }
  }
}
