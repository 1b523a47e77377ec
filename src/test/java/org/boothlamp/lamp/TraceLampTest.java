package org.boothlamp.lamp;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.boothlamp.judging.Signal;
import org.boothlamp.testing.HandTurnedClock;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class TraceLampTest {

  @TempDir Path folder;

  private Path file() {
    return folder.resolve("lamp.csv");
  }

  private List<String> rows() {
    try {
      return Files.readAllLines(file());
    } catch (IOException failure) {
      throw new UncheckedIOException(failure);
    }
  }

  @Test
  void shouldWriteARowAtEachChangeBeforeItReturns() throws IOException {
    HandTurnedClock clock = new HandTurnedClock(1_000);
    Files.writeString(file(), "of an earlier run\n".repeat(10));
    try (TraceLamp trace = TraceLamp.open(file(), clock)) {
      trace.apply(Signal.IDLE, 1, 400);
      clock.advanceNanos(10);
      trace.apply(Signal.IDLE, 0, 410);
      trace.apply(Signal.RED, 4, -420);
      assertEquals(
          List.of("monotonic_ns,samples_ns,signal", "1000,400,idle", "1010,-420,red"), rows());
      clock.advanceNanos(10);
    }
    assertEquals("1020,-420,dark", rows().get(3));
  }

  @Test
  void shouldSayWhichFileCannotBeWritten() throws IOException {
    Path missing = Files.createFile(folder.resolve("no-folder")).resolve("lamp.csv");
    LampUnavailableException refused =
        assertThrows(
            LampUnavailableException.class, () -> TraceLamp.open(missing, new HandTurnedClock()));
    assertTrue(refused.getMessage().contains(missing.toString()));
    assertTrue(refused.getMessage().contains("see that its folder exists"));
  }

  @Test
  void shouldSayThatTheDiskIsFull() {
    Path full = Path.of("/dev/full");
    assumeTrue(Files.exists(full), "this system has no /dev/full");
    LampUnavailableException refused =
        assertThrows(
            LampUnavailableException.class, () -> TraceLamp.open(full, new HandTurnedClock()));
    assertTrue(refused.getMessage().contains("/dev/full cannot be written"));
  }

  @Nested
  class Contract extends WordOutputContract {

    @Override
    protected LampOutput open(HandTurnedClock clock) throws IOException {
      return TraceLamp.open(file(), clock);
    }

    @Override
    protected Signal told() {
      String row = rows().get(rows().size() - 1);
      return Signal.ofWord(row.split(",")[2]);
    }
  }
}
