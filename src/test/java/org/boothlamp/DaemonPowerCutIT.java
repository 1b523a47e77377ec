package org.boothlamp;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import java.util.Set;
import org.boothlamp.boothlog.BoothLogReader;
import org.boothlamp.report.RunRecord;
import org.boothlamp.testing.BoothFolder;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Switches a booth off at the wall, again and again: the daemon's process is killed at moments that
 * it does not choose, and started on the same log. What it welded is told by its lamp's trace,
 * which has the monotonic time of each change.
 *
 * <p>{@code -Dboothlamp.kills=200} for a long run.
 */
class DaemonPowerCutIT {

  private static final int KILLS = Integer.getInteger("boothlamp.kills", 12);
  private static final long SEED = 20_261_125;

  /** What is safe from the lamp's last change of a run on, and what a power cut may take. */
  private static final double DURABLE_SECONDS = 0.5;

  private static final double MOST_SHORT_SECONDS = 2.0;

  /** The lamp goes off one bridge after the current has, 0.3 s. */
  private static final double BRIDGE_SECONDS = 0.3;

  /** Longest time from the current's start to the lamp's settling, and to its fault. */
  private static final double LAMP_SECONDS = 0.1;

  @TempDir Path folder;
  private final Random random = new Random(SEED);
  private final Set<Long> known = new HashSet<>();
  private double shortest;
  private int cutOff;
  private int finished;

  /** One run as the lamp saw it; the end is NaN while it burns. */
  private record Seen(double startSeconds, double offSeconds) {}

  @Test
  void shouldKeepEveryFinishedSegmentOverPowerCuts() throws Exception {
    BoothFolder booth = new BoothFolder(folder);
    ShortRuns.into(booth, folder, 10);
    for (int kill = 0; kill < KILLS; kill++) {
      weldAndKill(booth, 0.5 + 7 * random.nextDouble(), "kill " + kill);
    }
    System.out.printf(
        Locale.ROOT,
        "%d kills: %d runs finished before one, none missing; %d cut off, at most %.2f s short%n",
        KILLS,
        finished,
        cutOff,
        shortest);
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

  private List<RunRecord> newRuns(BoothFolder booth) {
    try (BoothLogReader reader = BoothLogReader.open(booth.log())) {
      List<RunRecord> fresh = new ArrayList<>();
      for (RunRecord run : reader.read(0, Long.MAX_VALUE).runs()) {
        if (known.add(run.id())) {
          fresh.add(run);
        }
      }
      return fresh;
    }
  }

  private void check(List<Seen> seen, List<RunRecord> logged, double killed, String when) {
    int next = 0;
    for (Seen run : seen) {
      boolean last = Double.isNaN(run.offSeconds());
      double length = (last ? killed : run.offSeconds()) - run.startSeconds();
      RunRecord row = next < logged.size() ? logged.get(next) : null;
      String what = when + ", run " + next + " of " + length + " s: " + row;
      if (last) {
        checkCutOff(row, length, what);
      } else if (killed - (run.offSeconds() - BRIDGE_SECONDS) >= DURABLE_SECONDS) {
        assertNotNull(row, what);
        assertEquals("arc off", row.end(), what);
        assertEquals(length - BRIDGE_SECONDS, row.lengthSeconds(), 2 * LAMP_SECONDS, what);
        finished++;
      }
      next++;
    }
    assertTrue(logged.size() <= seen.size(), when + ": " + logged.size() + " for " + seen.size());
  }

  /** Of the figures of a save; before the first there may be no row at all. */
  private void checkCutOff(RunRecord row, double length, String what) {
    double saved = row == null ? 0 : row.lengthSeconds();
    assertTrue(length - saved <= MOST_SHORT_SECONDS + LAMP_SECONDS, what);
    shortest = Math.max(shortest, length - saved);
    cutOff++;
  }
}
