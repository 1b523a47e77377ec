package org.boothlamp;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import org.boothlamp.app.Wiring;
import org.boothlamp.calibration.CalibrationBook;
import org.boothlamp.calibration.CalibrationPoint;
import org.boothlamp.calibration.CalibrationRecord;
import org.boothlamp.settings.BoothSettings;
import org.boothlamp.settings.BoothSettingsFile;
import org.boothlamp.testing.BoothFolder;
import org.boothlamp.testing.FrontEndPlayer;
import org.boothlamp.testing.LoadFollower;
import org.boothlamp.testing.PtyPair;
import org.boothlamp.testing.SettableLoad;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A calibration whose power is cut: the jar as a process, killed while it takes a point. */
class CalibrateKillIT {

  private static final double AMPS_PER_COUNT = 0.29296875;
  private static final double VOLTS_PER_COUNT = 0.0244140625;
  private static final int KEPT_AT_LEAST = 3;

  @TempDir Path folder;

  private final SettableLoad load =
      new SettableLoad(AMPS_PER_COUNT, VOLTS_PER_COUNT).clamp(1.04, 3);
  private PtyPair cable;
  private FrontEndPlayer player;
  private BoothFolder booth;
  private Path points;

  @BeforeEach
  void connect() throws IOException {
    cable = new PtyPair(Files.createDirectory(folder.resolve("sensor")));
    booth =
        new BoothFolder(folder)
            .source(
                """
                [source]
                kind = "serial"
                port = "%s"
                [current]
                amps_per_count = %s
                [voltage]
                volts_per_count = %s
                [calibration]
                current_full_scale_a = 500
                """
                    .formatted(cable.hostSide(), AMPS_PER_COUNT, VOLTS_PER_COUNT));
    booth.write();
    points =
        booth.write(
            folder.resolve("points.csv"),
            """
            level,direction,reference
            0,rising,0
            125,rising,125
            250,rising,250
            375,rising,375
            500,rising,500
            375,falling,375
            250,falling,250
            125,falling,125
            0,falling,0
            """);
    player = new FrontEndPlayer(cable.boardSide(), load, 1000).framePairs(100).speed(20).start();
  }

  @AfterEach
  void disconnect() throws IOException {
    player.close();
    cable.close();
  }

  private DaemonProcess start(String... more) throws IOException {
    List<Object> words = new ArrayList<>();
    Collections.addAll(words, "calibrate", "current", "--settings", booth.settings());
    Collections.addAll(words, "--points", points, "--accept", "--technician", "K-2");
    Collections.addAll(words, "--meter-make", "bench meter", "--meter-serial", "M-1");
    Collections.addAll(words, "--certificate", "C-77", "--certificate-date");
    Collections.addAll(words, LocalDate.now().minusMonths(2), "--accuracy-percent", "0.1");
    Collections.addAll(words, "--accuracy-counts", "2", "--resolution", "0.1");
    Collections.addAll(words, (Object[]) more);
    return DaemonProcess.start(folder, words.toArray());
  }

  /** Sets the load as the process says; answers what it said so far. */
  private static String follow(DaemonProcess process, LoadFollower follower) {
    byte[] all = process.out().getBytes(StandardCharsets.UTF_8);
    for (int i = follower.text().getBytes(StandardCharsets.UTF_8).length; i < all.length; i++) {
      follower.write(all[i]);
    }
    return follower.text();
  }

  private static long pointsSaid(String out) {
    return out.lines().filter(line -> line.contains("  reference ")).count();
  }

  private CalibrationRecord record() {
    BoothSettings settings = BoothSettingsFile.read(booth.settings());
    try (CalibrationBook book = new Wiring().calibrationBook(settings)) {
      assertEquals(1, book.history().records().size());
      return book.history().records().get(0);
    }
  }

  @Test
  void shouldLoseOnlyThePointThatWasBeingTaken() throws Exception {
    List<CalibrationPoint> kept;
    try (DaemonProcess first = start()) {
      LoadFollower follower = new LoadFollower(load);
      first.await("points", () -> pointsSaid(follow(first, follower)) >= KEPT_AT_LEAST);
      first.kill();
      long said = pointsSaid(follow(first, follower));
      kept = record().points();
      assertTrue(record().isUnderWay());
      assertTrue(
          kept.size() >= said && kept.size() <= said + 1, said + " said, " + kept.size() + " kept");
    }
    try (DaemonProcess second = start("--resume")) {
      LoadFollower follower = new LoadFollower(load);
      second.await(
          "the end", () -> follow(second, follower).contains("is accepted") || !second.isAlive());
      assertEquals(0, second.exitCode(), second.err());
      assertEquals(9 - kept.size(), pointsSaid(follow(second, follower)));
    }
    assertEquals(kept, record().points().subList(0, kept.size()));
    assertEquals(9, record().points().size());
    assertTrue(record().isAccepted());
  }
}
