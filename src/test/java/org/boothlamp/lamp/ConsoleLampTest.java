package org.boothlamp.lamp;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.List;
import org.boothlamp.judging.Signal;
import org.boothlamp.report.Colour;
import org.boothlamp.testing.HandTurnedClock;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;

class ConsoleLampTest {

  private static final long WALL_MILLIS = Instant.parse("2026-03-02T14:03:27.412Z").toEpochMilli();

  private final ByteArrayOutputStream bytes = new ByteArrayOutputStream();

  private ConsoleLamp console(ZoneId zone, Colour colour) {
    PrintStream stream = new PrintStream(bytes, true, StandardCharsets.US_ASCII);
    return new ConsoleLamp(stream, () -> WALL_MILLIS, zone, colour);
  }

  private List<String> lines() {
    return bytes.toString(StandardCharsets.US_ASCII).lines().toList();
  }

  @Test
  void shouldTellEverySignalByWordAndSymbol() throws IOException {
    ConsoleLamp lamp = console(ZoneId.of("Europe/Berlin"), Colour.PLAIN);
    for (Signal signal : Signal.values()) {
      lamp.apply(signal, 0, 0);
    }
    assertEquals(
        List.of(
            "15:03:27.412  [...]  dark      the monitor is not running",
            "15:03:27.412  [..g]  idle      no arc",
            "15:03:27.412  [.AG]  settling  arc seen, not judged yet",
            "15:03:27.412  [..G]  green     inside the window",
            "15:03:27.412  [.A.]  amber     inside, near a limit",
            "15:03:27.412  [R..]  red       outside the window",
            "15:03:27.412  [ra.]  fault     do not trust the lamp"),
        lines());
  }

  @Test
  void shouldPrintALineOnlyWhenTheSignalChanges() throws IOException {
    ConsoleLamp lamp = console(ZoneOffset.UTC, Colour.PLAIN);
    lamp.apply(Signal.IDLE, LampPattern.GREEN, 0);
    lamp.apply(Signal.IDLE, 0, 0);
    lamp.apply(Signal.GREEN, LampPattern.GREEN, 0);
    assertEquals(2, lines().size());
  }

  @Test
  void shouldAddColourOnlyWhenTold() throws IOException {
    console(ZoneOffset.UTC, Colour.PLAIN).apply(Signal.RED, 0, 0);
    assertFalse(bytes.toString(StandardCharsets.US_ASCII).contains("\u001B"));
    console(ZoneOffset.UTC, Colour.ANSI).apply(Signal.RED, 0, 0);
    assertTrue(lines().get(1).matches(".*\u001B\\[31m.*red.*\u001B\\[0m"));
  }

  @Test
  void shouldSayThatTheConsoleTakesNoMoreLines() {
    OutputStream broken =
        new OutputStream() {
          @Override
          public void write(int oneByte) throws IOException {
            throw new IOException("broken pipe");
          }
        };
    PrintStream stream = new PrintStream(broken, true, StandardCharsets.US_ASCII);
    ConsoleLamp lamp = new ConsoleLamp(stream, () -> WALL_MILLIS, ZoneOffset.UTC, Colour.PLAIN);
    assertThrows(IOException.class, () -> lamp.apply(Signal.RED, 0, 0));
  }

  @Nested
  class Contract extends WordOutputContract {

    @Override
    protected LampOutput open(HandTurnedClock clock) {
      return console(ZoneOffset.UTC, Colour.PLAIN);
    }

    @Override
    protected Signal told() {
      String line = lines().get(lines().size() - 1);
      return Signal.ofWord(line.split(" +")[2]);
    }
  }
}
