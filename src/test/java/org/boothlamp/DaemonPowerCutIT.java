package org.boothlamp;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import java.util.Set;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import org.boothlamp.testing.BoothFolder;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Switches a booth off at the wall, again and again: the daemon's process is killed at moments that
 * it does not choose, and started on the same log. What it welded is told by its lamp's trace,
 * which has the monotonic time of each change.
 *
 * <p>{@code -Dboothlamp.power-cuts=200} for a long run.
 */
class DaemonPowerCutIT {

  private static final int CUTS = Integer.getInteger("boothlamp.power-cuts", 12);

  /** Booths side by side: a booth mostly waits for its runs. */
  private static final int BOOTHS = 3;

  private static final long SEED = 20_261_125;

  /** What is safe from the end of a run on, and what a power cut may take. */
  private static final double DURABLE_SECONDS = 0.5;

  private static final double MOST_SHORT_SECONDS = 2.0;

  /** The lamp goes off one bridge after the current has, 0.3 s. */
  private static final double BRIDGE_SECONDS = 0.3;

  /** Longest time from the current's start, or end, to the lamp. */
  private static final double LAMP_SECONDS = 0.1;

  /** How much later it may be while other things run on this machine. */
  private static final double BUSY_SECONDS = 0.5;

  @TempDir Path folder;

  /** One run as the lamp saw it; the end is NaN while it burns. */
  private record Seen(double startSeconds, double offSeconds) {

    boolean isBurning() {
      return Double.isNaN(offSeconds);
    }

    double endSeconds() {
      return offSeconds - BRIDGE_SECONDS;
    }

    double lengthSeconds() {
      return endSeconds() - startSeconds;
    }

    /** False if it may have been too short for a segment, 0.3 s. */
    boolean isNoTouch() {
      return lengthSeconds() > 0.3 + LAMP_SECONDS;
    }
  }

  @Test
  void shouldKeepEveryFinishedSegmentOverPowerCuts() throws Exception {
    ExecutorService booths = Executors.newFixedThreadPool(BOOTHS);
    try {
      List<Future<Cuts>> running = new ArrayList<>();
      for (int booth = 0; booth < BOOTHS; booth++) {
        Cuts cuts = new Cuts(Files.createDirectory(folder.resolve("booth-" + booth)), SEED + booth);
        running.add(booths.submit(() -> cuts.make((CUTS + BOOTHS - 1) / BOOTHS)));
      }
      for (Future<Cuts> booth : running) {
        booth.get().assertProved();
      }
    } finally {
      booths.shutdownNow();
    }
  }

  /** One booth and its power cuts. */
  private static final class Cuts {

    private final Path folder;
    private final Random random;
    private final Set<Long> known = new HashSet<>();
    private double mostShort;
    private int cutOff;
    private int finished;

    Cuts(Path folder, long seed) {
      this.folder = folder;
      random = new Random(seed);
    }

    Cuts make(int cuts) throws Exception {
      BoothFolder booth = new BoothFolder(folder);
      ShortRuns.into(booth, folder, 10);
      for (int cut = 0; cut < cuts; cut++) {
        weldAndKill(booth, 1 + 7 * random.nextDouble(), folder.getFileName() + " cut " + cut);
      }
      System.out.printf(
          Locale.ROOT,
          "%d power cuts: %d runs finished before one, none missing; %d cut off, at most %.2f s short%n",
          cuts,
          finished,
          cutOff,
          mostShort);
      return this;
    }

    void assertProved() {
      assertTrue(cutOff > 0 && finished > 0, "nothing was proved");
    }

    private void weldAndKill(BoothFolder booth, double seconds, String when) throws Exception {
      double killed;
      try (DaemonProcess daemon =
          DaemonProcess.start(folder, "run", "--settings", booth.settings())) {
        daemon.awaitSaid("recording");
        Thread.sleep(Math.round(1_000 * seconds));
        killed = System.nanoTime() / 1e9;
        daemon.kill();
      }
      check(seen(booth), newRuns(booth), killed, when);
    }

    private List<Logged> newRuns(BoothFolder booth) throws Exception {
      List<Logged> fresh = new ArrayList<>();
      try (Connection log = DriverManager.getConnection("jdbc:sqlite:" + booth.log());
          ResultSet row =
              log.createStatement()
                  .executeQuery(
                      "SELECT id, start_mono_ns / 1e9, length_s, end_word FROM segment ORDER BY id")) {
        while (row.next()) {
          Logged run =
              new Logged(row.getLong(1), row.getDouble(2), row.getDouble(3), row.getString(4));
          if (known.add(run.id())) {
            fresh.add(run);
          } else {
            assertNotNull(run.end(), "closed at the next start: " + run);
          }
        }
      }
      return fresh;
    }

    private void check(List<Seen> seen, List<Logged> logged, double killed, String when) {
      for (int i = 1; i < logged.size(); i++) {
        double end = logged.get(i - 1).endSeconds();
        assertTrue(end <= logged.get(i).startSeconds(), when + ": there twice: " + logged);
      }
      for (Seen lamp : seen) {
        double end = lamp.isBurning() ? killed : lamp.endSeconds();
        List<Logged> same =
            logged.stream().filter(run -> run.overlaps(lamp.startSeconds(), end)).toList();
        String what = when + " at " + killed + ": " + lamp + ", logged " + same;
        assertTrue(same.size() <= 1, what);
        if (lamp.isBurning()) {
          checkCutOff(same, lamp.startSeconds(), killed, what);
        } else if (lamp.isNoTouch() && killed - lamp.endSeconds() >= DURABLE_SECONDS) {
          assertEquals(1, same.size(), what);
          assertEquals("arc off", same.get(0).end(), what);
          assertEquals(lamp.lengthSeconds(), same.get(0).lengthSeconds(), BUSY_SECONDS, what);
          finished++;
        }
      }
    }

    /** Of the figures of a save; before the first there may be no row at all. */
    private void checkCutOff(List<Logged> same, double lampSeconds, double killed, String what) {
      double saved = same.isEmpty() ? lampSeconds : same.get(0).endSeconds();
      assertTrue(killed - saved <= MOST_SHORT_SECONDS, what);
      mostShort = Math.max(mostShort, killed - saved);
      cutOff++;
    }
  }

  private static List<Seen> seen(BoothFolder booth) {
    List<Seen> runs = new ArrayList<>();
    double started = Double.NaN;
    for (LampTrace.Row row : LampTrace.read(booth.trace()).rows()) {
      boolean off = row.signal().equals("idle") || row.signal().equals("dark");
      double at = row.monotonicNanos() / 1e9;
      if (off && !Double.isNaN(started)) {
        runs.add(new Seen(started, at));
        started = Double.NaN;
      } else if (row.signal().equals("settling") && Double.isNaN(started)) {
        started = at;
      }
    }
    if (!Double.isNaN(started)) {
      runs.add(new Seen(started, Double.NaN));
    }
    return runs;
  }

  /** A run in the log, its start on the clock of the lamp's trace. */
  private record Logged(long id, double startSeconds, double lengthSeconds, String end) {

    double endSeconds() {
      return startSeconds + lengthSeconds;
    }

    boolean overlaps(double fromSeconds, double untilSeconds) {
      return startSeconds < untilSeconds && endSeconds() > fromSeconds;
    }
  }
}
