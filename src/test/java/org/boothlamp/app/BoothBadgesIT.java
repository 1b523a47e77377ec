package org.boothlamp.app;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.FileOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;
import java.util.function.BooleanSupplier;
import org.boothlamp.boothlog.BoothLogReader;
import org.boothlamp.boothlog.SignIn;
import org.boothlamp.cli.RunningBooth;
import org.boothlamp.cli.Terminal;
import org.boothlamp.report.Colour;
import org.boothlamp.report.EventRecord;
import org.boothlamp.settings.BoothSettingsFile;
import org.boothlamp.testing.BoothFolder;
import org.boothlamp.testing.PtyPair;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A whole booth, simulated but for a badge reader on a pseudo-terminal. */
class BoothBadgesIT {

  private static final String REAL_TIME =
      """
      [source]
      kind = "simulated"
      process = "stick"
      pairs_per_second = 5000
      speed = "real-time"
      """;

  @TempDir Path folder;
  private BoothFolder booth;

  @BeforeEach
  void setUp() throws IOException {
    booth = new BoothFolder(folder).source(REAL_TIME).defaultProcedure("S-1");
    booth.stickProcedure("S-1", "fill");
    Files.writeString(
        folder.resolve("badges.toml"),
        "[[badge]]\ncode = \"0004711\"\ntrainee = \"T-04\"\n"
            + "[[badge]]\ncode = \"0009999\"\nsign_out = true\n");
  }

  private static void await(String what, BooleanSupplier condition) {
    long begun = System.nanoTime();
    while (!condition.getAsBoolean()) {
      assertTrue(System.nanoTime() - begun < TimeUnit.SECONDS.toNanos(30), "never came: " + what);
      LockSupport.parkNanos(5_000_000);
    }
  }

  private static void swipe(PtyPair cable, String code) throws IOException {
    try (OutputStream board = new FileOutputStream(cable.boardSide().toFile())) {
      board.write((code + "\r\n").getBytes(StandardCharsets.US_ASCII));
    }
  }

  private List<String> signals() {
    try {
      return Files.exists(booth.trace())
          ? Files.readAllLines(booth.trace()).stream().skip(1).map(l -> l.split(",")[2]).toList()
          : List.of();
    } catch (IOException e) {
      throw new AssertionError(e);
    }
  }

  private long millisAt(int row) throws IOException {
    return Long.parseLong(Files.readAllLines(booth.trace()).get(row + 1).split(",")[0]) / 1_000_000;
  }

  private SignIn latest() {
    try (BoothLogReader reader = BoothLogReader.open(booth.log())) {
      return reader.latestSignIn();
    }
  }

  private List<EventRecord> events(String what) {
    try (BoothLogReader reader = BoothLogReader.open(booth.log())) {
      return reader.read(0, Long.MAX_VALUE).events().stream()
          .filter(event -> event.what().equals(what))
          .toList();
    }
  }

  @Test
  void shouldSignInAndOutByBadgeAndSayNoToAnUnknownOne() throws Exception {
    Terminal terminal = new Terminal(System.out, System.err, false, 80, Colour.PLAIN);
    try (PtyPair cable = new PtyPair(folder)) {
      Path settings =
          booth
              .extra(
                  "[badge]\nkind = \"serial\"\nport = \""
                      + cable.hostSide()
                      + "\"\ntable = \"badges.toml\"\n")
              .write();
      try (RunningBooth running = new Wiring().booth(BoothSettingsFile.read(settings), terminal)) {
        running.start();
        await("idle", () -> signals().contains("idle"));
        swipe(cable, "0004711");
        await("T-04", () -> running.status().assignment().trainee().equals("T-04"));
        assertEquals("S-1", latest().procedureId());
        assertFalse(signals().contains("fault"));
        swipe(cable, "8765423");
        await("the blink", () -> signals().contains("fault"));
        int blink = signals().indexOf("fault");
        await("idle again", () -> signals().size() > blink + 1);
        assertEquals("idle", signals().get(blink + 1));
        long millis = millisAt(blink + 1) - millisAt(blink);
        assertTrue(millis >= 900 && millis < 1_500, () -> "blinked for " + millis + " ms");
        swipe(cable, "0009999");
        await("nobody", () -> running.status().assignment().trainee().isEmpty());
        cable.cut();
        await("the loss", () -> !events("badge reader lost").isEmpty());
        cable.restore();
        await("its end", () -> events("badge reader lost").get(0).lengthSeconds() > 0);
      }
      assertEquals("7 characters, ends in 23", events("unknown badge").get(0).detail());
      assertTrue(latest().isSignOut());
    }
  }
}
