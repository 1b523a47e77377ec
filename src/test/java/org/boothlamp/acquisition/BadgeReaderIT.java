package org.boothlamp.acquisition;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.FileOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.TimeUnit;
import java.util.function.BooleanSupplier;
import org.boothlamp.monitor.NanoClock;
import org.boothlamp.testing.PtyPair;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Badges over a pseudo-terminal, and over a pipe in the place of an input device. */
class BadgeReaderIT {

  private static final long WAIT_NANOS = 50_000_000L;

  @TempDir Path folder;

  private static String await(BadgeReader reader) {
    long begun = System.nanoTime();
    String code = null;
    while (code == null && System.nanoTime() - begun < TimeUnit.SECONDS.toNanos(30)) {
      code = reader.next(WAIT_NANOS);
    }
    return code;
  }

  private static void await(BadgeReader reader, BooleanSupplier condition) {
    long begun = System.nanoTime();
    while (!condition.getAsBoolean()) {
      assertTrue(System.nanoTime() - begun < TimeUnit.SECONDS.toNanos(30), "never came");
      reader.next(WAIT_NANOS);
    }
  }

  private static void send(PtyPair cable, String text) throws IOException {
    try (OutputStream board = new FileOutputStream(cable.boardSide().toFile())) {
      board.write(text.getBytes(StandardCharsets.US_ASCII));
    }
  }

  @Test
  void shouldReadASerialReaderThatGoesAwayAndComesBack() throws Exception {
    try (PtyPair cable = new PtyPair(folder);
        BadgeReader reader =
            SerialBadges.at(cable.hostSide().toString(), 9_600, BadgeEnding.LINE)) {
      await(reader, () -> reader.failure() == null && reader.next(0) == null);
      send(cable, "0004711\r\n");
      assertEquals("0004711", await(reader));
      cable.cut();
      await(reader, () -> reader.failure() != null);
      assertTrue(reader.failure().getMessage().contains("plug the badge reader in"));
      cable.restore();
      await(reader, () -> reader.failure() == null);
      send(cable, "0004712\r\n");
      assertEquals("0004712", await(reader));
    }
  }

  @Test
  void shouldWaitForKeysAndGiveTheDeviceBack() throws Exception {
    Path device = folder.resolve("event0");
    assertEquals(0, new ProcessBuilder("mkfifo", device.toString()).start().waitFor());
    KeyboardBadges reader =
        new KeyboardBadges(device.toString(), InputEventLayout.BITS_64, NanoClock.SYSTEM);
    // The first look opens it for reading, and lets a writer open it in turn.
    reader.next(0);
    try (OutputStream keys = Files.newOutputStream(device)) {
      reader.next(WAIT_NANOS);
      byte[] typed = new TypedKeys(InputEventLayout.BITS_64).type("T-04").bytes();
      keys.write(typed, 0, 240);
      keys.flush();
      reader.next(WAIT_NANOS);
      keys.write(typed, 240, typed.length - 240);
      keys.flush();
      assertEquals("T-04", await(reader));
    }
    await(reader, () -> reader.failure() != null);
    reader.close();
  }
}
