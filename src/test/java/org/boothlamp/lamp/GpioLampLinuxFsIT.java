package org.boothlamp.lamp;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.OptionalInt;
import org.boothlamp.judging.Signal;
import org.boothlamp.testing.HandTurnedClock;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Pi4J's real linuxfs output on a folder laid out like the kernel's GPIO files. */
@Tag("quiet")
class GpioLampLinuxFsIT extends LightsOutputContract {

  private static final List<Integer> PINS = List.of(17, 27, 22, 5);

  @TempDir Path folder;

  private void layOut() throws IOException {
    for (String file : List.of("export", "unexport")) {
      Files.writeString(folder.resolve(file), "");
    }
    for (int pin : PINS) {
      Files.createDirectories(folder.resolve("gpio" + pin));
      Files.writeString(folder.resolve("gpio" + pin).resolve("direction"), "in");
      Files.writeString(folder.resolve("gpio" + pin).resolve("value"), "0");
    }
  }

  private GpioLamp openPins(ActiveLevel active) throws IOException {
    return GpioLamp.openLinuxFs(folder, new LampPins(17, 27, 22, OptionalInt.of(5), active));
  }

  private String read(int pin, String file) {
    try {
      return Files.readString(folder.resolve("gpio" + pin).resolve(file)).trim();
    } catch (IOException failure) {
      throw new UncheckedIOException(failure);
    }
  }

  @Override
  protected LampOutput open(HandTurnedClock clock) throws IOException {
    layOut();
    return openPins(ActiveLevel.HIGH);
  }

  @Override
  protected int lights() {
    return LampPattern.RED * Integer.parseInt(read(17, "value"))
        + LampPattern.AMBER * Integer.parseInt(read(27, "value"))
        + LampPattern.GREEN * Integer.parseInt(read(22, "value"));
  }

  @Test
  void shouldMakeEveryPinAnOutputAndLeaveItInactive() throws IOException {
    lamp().close();
    try (GpioLamp lamp = openPins(ActiveLevel.LOW)) {
      PINS.forEach(pin -> assertEquals("out", read(pin, "direction")));
      PINS.forEach(pin -> assertEquals("1", read(pin, "value")));
      lamp.apply(Signal.RED, LampPattern.RED, 0);
      assertEquals("0", read(17, "value"));
    }
    PINS.forEach(pin -> assertEquals("1", read(pin, "value")));
  }

  @Test
  void shouldShowAgainOnceAPinHasComeBack() throws IOException {
    show(Signal.GREEN);
    Path value = folder.resolve("gpio17").resolve("value");
    Path aside = folder.resolve("gone");
    Files.move(folder.resolve("gpio17"), aside);
    show(Signal.RED);
    keepShowing(Signal.RED, 300);
    Files.move(aside, folder.resolve("gpio17"));
    assertEquals("0", Files.readString(value).trim());
    keepShowing(Signal.RED, 1_000);
    assertShowing(Signal.RED);
  }

  @Test
  void shouldSayWhichPinTheFolderDoesNotHave() {
    LampPins noSuchPin = new LampPins(17, 27, 99, OptionalInt.empty(), ActiveLevel.HIGH);
    LampUnavailableException refused =
        assertThrows(LampUnavailableException.class, () -> GpioLamp.openLinuxFs(folder, noSuchPin));
    assertTrue(refused.getMessage().contains("gpio99"), refused.getMessage());
  }
}
