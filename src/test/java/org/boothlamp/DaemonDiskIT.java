package org.boothlamp;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.boothlamp.boothlog.BoothLogReader;
import org.boothlamp.report.ShiftRecords;
import org.boothlamp.testing.BoothFolder;
import org.boothlamp.testing.TestDisk;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.api.parallel.Execution;
import org.junit.jupiter.api.parallel.ExecutionMode;

/** The daemon on disks that stand still or are full: the lamp must not notice. */
class DaemonDiskIT {

  private static final int STALL_SECONDS = 10;

  /** What recordings leave to the log, bytes and in the settings. */
  private static final long FREE_BYTES = 1_000_000;

  private static final String FREE = "free_mb = 1\n";

  private static ShiftRecords logged(BoothFolder booth) {
    try (BoothLogReader reader = BoothLogReader.open(booth.log())) {
      return reader.read(0, Long.MAX_VALUE);
    }
  }

  private static long finished(BoothFolder booth) {
    return logged(booth).runs().stream().filter(run -> !run.end().equals("running")).count();
  }

  private static boolean tells(BoothFolder booth, String event) {
    return logged(booth).events().stream().anyMatch(each -> each.what().equals(event));
  }

  private static DaemonProcess start(BoothFolder booth, Path folder) throws Exception {
    DaemonProcess daemon = DaemonProcess.start(folder, "run", "--settings", booth.settings());
    // By then the log is there.
    daemon.awaitSaid("booth " + BoothFolder.BOOTH_ID);
    return daemon;
  }

  private static List<Path> recordings(Path in) {
    try (Stream<Path> files = Files.list(in)) {
      return files.filter(file -> file.toString().endsWith(".wav")).sorted().toList();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  @Test
  @Execution(ExecutionMode.CONCURRENT)
  void shouldLoseNothingWhileTheDiskOfLogAndRecordingsStandsStillForTenSeconds(@TempDir Path folder)
      throws Exception {
    BoothFolder booth = new BoothFolder(folder);
    ShortRuns.into(booth, folder, 12);
    Path logFolder = booth.log().getParent();
    long frozenNanos;
    long thawedNanos;
    try (TestDisk disk = TestDisk.freezable(folder.resolve("disk"), logFolder)) {
      booth.extra("[recordings]\nfree_mb = 0\n").write();
      try (DaemonProcess daemon = start(booth, folder)) {
        daemon.await("a finished run", () -> finished(booth) > 0);
        frozenNanos = System.nanoTime();
        disk.freezeFor(STALL_SECONDS);
        thawedNanos = System.nanoTime();
        daemon.await("the stall is told", () -> tells(booth, "log stalled"));
        assertEquals(143, daemon.terminate());
      }
      int during =
          LampPunctuality.assertInTime(booth.log(), booth.trace(), frozenNanos, thawedNanos);
      assertTrue(during > 1, "runs that began while the disk stood still: " + during);
      assertEquals(
          logged(booth).runs().size(),
          LampTrace.read(booth.trace()).signals().stream().filter("settling"::equals).count());
      assertFalse(tells(booth, "log queue full"));
      assertFalse(tells(booth, "recording gap"));
      assertEquals(finished(booth), recordings(logFolder.resolve("recordings")).size());
    }
  }

  @Test
  @Execution(ExecutionMode.CONCURRENT)
  void shouldGiveUpTheOldestRecordingsFirstAndThenAllWhileTheLampGoesOn(@TempDir Path folder)
      throws Exception {
    BoothFolder booth = new BoothFolder(folder);
    ShortRuns.into(booth, folder, 12);
    Path recordings = folder.resolve("recordings");
    // Room for the first three runs, and for the fourth and longest alone.
    long room = Math.round(9 * ShortRuns.bytesPerSecond(folder));
    long filledNanos;
    try (TestDisk disk = TestDisk.inMemory(recordings, FREE_BYTES + room)) {
      booth.extra("[recordings]\nfolder = \"" + recordings + "\"\n" + FREE).write();
      try (DaemonProcess daemon = start(booth, folder)) {
        daemon.await("a recording", () -> !recordings(recordings).isEmpty());
        Path oldest = recordings(recordings).get(0);
        daemon.await("the oldest goes", () -> !Files.exists(oldest));
        assertFalse(tells(booth, "recordings stopped"), daemon::err);
        daemon.await("younger ones stay", () -> !recordings(recordings).isEmpty());
        disk.fill();
        filledNanos = System.nanoTime();
        daemon.await("the end is told", () -> tells(booth, "recordings stopped"));
        long runs = finished(booth);
        daemon.await("the next run", () -> finished(booth) > runs);
        assertEquals(143, daemon.terminate());
      }
      int after =
          LampPunctuality.assertInTime(booth.log(), booth.trace(), filledNanos, Long.MAX_VALUE);
      assertTrue(after > 0, "no run began on the full disk");
    }
  }
}
