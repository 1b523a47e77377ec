package org.boothlamp.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.ZoneOffset;
import org.boothlamp.boothlog.BoothLogReader;
import org.boothlamp.boothlog.FilledLog;
import org.boothlamp.report.Colour;
import org.boothlamp.report.ReplayScreen;
import org.boothlamp.report.SideBySide;
import org.boothlamp.testing.HandTurnedClock;
import org.boothlamp.words.Language;
import org.boothlamp.words.Phrases;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A run of 10 s from a log, on a clock whose hands the waiting turns. */
class ReplayPlayerTest {

  private final HandTurnedClock clock = new HandTurnedClock();
  private final long startNanos = clock.nanoTime();
  private final ByteArrayOutputStream out = new ByteArrayOutputStream();
  @TempDir Path folder;
  private SideBySide pair;

  @BeforeEach
  void fillALog() {
    Path log = folder.resolve("booth.db");
    FilledLog.write(log, "B-07", 2);
    try (BoothLogReader reader = BoothLogReader.open(log)) {
      pair = new SideBySide(reader.weldReplay(1), reader.weldReplay(2));
    }
  }

  private ReplayPlayer player(boolean interactive, String typed) {
    Terminal terminal =
        new Terminal(
            new PrintStream(out, true, StandardCharsets.UTF_8),
            System.err,
            interactive,
            80,
            Colour.PLAIN,
            new ByteArrayInputStream(typed.getBytes(StandardCharsets.UTF_8)));
    ReplayScreen screen =
        new ReplayScreen(pair, Phrases.in(Language.ENGLISH), ZoneOffset.UTC, 80, Colour.PLAIN);
    return new ReplayPlayer(screen, pair.frames(), terminal, clock, clock::advanceNanos);
  }

  private double playedSeconds() {
    return (clock.nanoTime() - startNanos) / 1e9;
  }

  private long pictures() {
    return out.toString(StandardCharsets.UTF_8).split("\u001B\\[H", -1).length - 2;
  }

  @Test
  void shouldTakeAsLongAsTheRunDid() {
    player(true, "").play(1);
    assertEquals(pair.frames() * 0.05, playedSeconds(), 0.1);
    assertEquals(pair.frames(), pictures());
  }

  @Test
  void shouldTakeFourTimesAsLongAtAQuarterOfTheSpeed() {
    player(true, "").play(0.25);
    assertEquals(pair.frames() * 0.2, playedSeconds(), 0.4);
  }

  @Test
  void shouldNeitherWaitNorMoveTheCursorWithoutATerminal() {
    player(false, "").print();
    String lines = out.toString(StandardCharsets.UTF_8);
    assertEquals(0, playedSeconds());
    assertFalse(lines.contains("\u001B"));
    assertTrue(lines.contains("Outside: volts above 26 V for 1.5 s"), lines);
  }

  @Test
  void shouldGoWhereItIsAskedToStepByStep() {
    player(false, "\n\nn\np\n9.5\nb\nnonsense\nq\n\n").step();
    String lines = out.toString(StandardCharsets.UTF_8);
    String[] seconds = {"0.00", "0.05", "0.10", "5.00", "0.00", "9.50", "9.45", "9.45"};
    int at = 0;
    for (String line : lines.lines().filter(l -> l.matches(" +[0-9.]+  \\[.*V .*")).toList()) {
      if (!line.endsWith("beside")) {
        assertEquals(seconds[at++], line.strip().split(" ")[0], lines);
      }
    }
    assertEquals(seconds.length, at, lines);
  }

  @Test
  void shouldEndWithWhatIsTyped() {
    player(false, "\n").step();
    assertTrue(out.toString(StandardCharsets.UTF_8).contains("0.05"));
  }
}
