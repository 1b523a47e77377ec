package org.boothlamp.boothlog;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.BufferedReader;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.concurrent.Callable;
import java.util.concurrent.FutureTask;
import java.util.concurrent.TimeUnit;
import org.boothlamp.report.RunRecord;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Kills a process that welds, again and again on the same log; two logs at a time. */
class BoothLogKillIT {

  private static final int LOGS = 2;

  /** Of both logs together; more by hand: {@code -Dboothlamp.kills=200}. */
  private static final int KILLS = Integer.getInteger("boothlamp.kills", 20);

  private static final long SEED = 20_260_302;

  /** The file may lag by the 2 s that may be lost, and a moment for the commit itself. */
  private static final double MOST_LOST_SECONDS = 2.0;

  @TempDir Path folder;

  /** What the process said last. */
  private record Said(int committed, int welded, double runningSeconds) {
    static Said of(String line) {
      String[] words = line.split(" ");
      return new Said(
          Integer.parseInt(words[0]), Integer.parseInt(words[1]), Double.parseDouble(words[2]));
    }
  }

  @Test
  void shouldLoseNoMoreThanTwoSecondsOfRunningSegment() throws Exception {
    List<FutureTask<Void>> logs = new ArrayList<>();
    for (int i = 0; i < LOGS; i++) {
      Path path = folder.resolve(i + "-" + BoothLog.FILE_NAME);
      FutureTask<Void> log = new FutureTask<>(new KilledLog(path, new Random(SEED + i)));
      new Thread(log, "kills " + i).start();
      logs.add(log);
    }
    for (FutureTask<Void> log : logs) {
      log.get();
    }
  }

  /** One log, and the processes that are killed on it one after the other. */
  private static final class KilledLog implements Callable<Void> {

    private final Path path;
    private final Random random;
    private int runsBefore;
    private int openBefore;

    KilledLog(Path path, Random random) {
      this.path = path;
      this.random = random;
    }

    @Override
    public Void call() throws Exception {
      int kills = KILLS / LOGS;
      for (int kill = 0; kill < kills; kill++) {
        Said said = weldAndKill(path, 200 + random.nextInt(3_000));
        check(said, path.getFileName() + ", kill " + kill + " after " + said);
      }
      // The last start closes what the last kill left open.
      new RunningLog(path).close();
      try (BoothLogReader reader = BoothLogReader.open(path)) {
        assertEquals(0, reader.counts().openSegments());
        assertEquals(openBefore, reader.counts().events(), "one event for each power loss");
        assertEquals(kills + 1, reader.counts().boots());
      }
      return null;
    }

    private static Said weldAndKill(Path path, long millis) throws Exception {
      Process process = ChildJvm.start(KilledWriter.class, path);
      try (BufferedReader output =
          new BufferedReader(
              new InputStreamReader(process.getInputStream(), StandardCharsets.UTF_8))) {
        String last = output.readLine();
        assertNotNull(last, "the process ended by itself");
        Thread.sleep(millis);
        // By its handle: that leaves what it said last in the pipe.
        process.toHandle().destroyForcibly();
        for (String line = last; line != null; line = output.readLine()) {
          last = line;
        }
        assertTrue(process.waitFor(10, TimeUnit.SECONDS));
        return Said.of(last);
      }
    }

    private void check(Said said, String when) throws Exception {
      try (LogConnection log = LogFile.openForReading(path)) {
        assertEquals("ok", log.text("PRAGMA integrity_check"), when);
        assertEquals(0, log.number("SELECT count(*) FROM pragma_foreign_key_check"), when);
      }
      List<RunRecord> runs = newRuns();
      List<RunRecord> open = runs.stream().filter(run -> run.end().equals("running")).toList();
      int finished = runs.size() - open.size();
      assertTrue(finished >= said.committed(), when + ": finished in the file " + finished);
      // A segment that ended just now may still be on its way, but no more than one.
      assertTrue(finished >= said.welded() - 1, when + ": finished in the file " + finished);
      checkRunning(said, open, when);
      openBefore += open.size();
    }

    private void checkRunning(Said said, List<RunRecord> open, String when) {
      assertTrue(open.size() <= 1, when);
      double saved = open.isEmpty() ? 0 : open.get(0).lengthSeconds();
      assertTrue(said.runningSeconds() - saved <= MOST_LOST_SECONDS, when + ": saved " + saved);
      if (saved > 0) {
        try (BoothLogReader reader = BoothLogReader.open(path)) {
          assertTrue(reader.trace(open.get(0).id()).size() >= 20 * saved, when);
        }
      }
    }

    private List<RunRecord> newRuns() {
      try (BoothLogReader reader = BoothLogReader.open(path)) {
        // Row numbers tell which are new: the times of the segments are the same in every process.
        List<RunRecord> fresh =
            reader.read(0, Long.MAX_VALUE).runs().stream()
                .filter(run -> run.id() > runsBefore)
                .toList();
        runsBefore += fresh.size();
        return fresh;
      }
    }
  }
}
