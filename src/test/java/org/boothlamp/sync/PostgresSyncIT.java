package org.boothlamp.sync;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.stream.Stream;
import org.boothlamp.boothlog.BoothLogReader;
import org.boothlamp.boothlog.FilledLog;
import org.boothlamp.boothlog.LateClockLog;
import org.boothlamp.monitor.WallClock;
import org.boothlamp.report.ShiftRecords;
import org.boothlamp.testing.CuttingProxy;
import org.boothlamp.testing.SyncServer;
import org.boothlamp.testing.WrittenCalibrations;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Rows to a real server over lines that fail: exactly one of each arrives, equal to the bit. */
class PostgresSyncIT {

  /** Rounds of the test with cuts: 100 with -Dboothlamp.sync.rounds=100. */
  private static final int ROUNDS = Integer.getInteger("boothlamp.sync.rounds", 6);

  private static final double GOAL_SECONDS = 10;

  /** The best of a few, for other things run on this machine. */
  private static final int TRIES = 3;

  private static final String BOOTH = "B-07";
  private static final WallClock CLOCK = WallClock.SYSTEM;

  @TempDir static Path serverFolder;
  private static SyncServer server;

  @TempDir Path folder;

  @BeforeAll
  static void startServer() throws Exception {
    server = SyncServer.start(serverFolder);
    server.addBooth(BOOTH);
  }

  @AfterAll
  static void stopServer() throws Exception {
    server.close();
  }

  @BeforeEach
  void emptyServer() {
    server.empty();
  }

  private Path log(int segments) {
    Path log = folder.resolve("log").resolve("booth.db");
    FilledLog.write(log, BOOTH, segments);
    WrittenCalibrations.write(log);
    return log;
  }

  private static void sendAll(Path log, String booth, SyncTarget target) throws SyncException {
    try (Syncer syncer = Syncer.open(log, booth, target, CLOCK)) {
      while (syncer.sendNext() > 0) {
        // the batch is the work
      }
    }
  }

  @Test
  void shouldKeepOneOfEachRowHoweverOftenTheLineIsCut() throws Exception {
    Path log = log(150);
    SplittableRandom random = new SplittableRandom(7);
    int cuts = 0;
    for (int round = 0; round < ROUNDS; round++) {
      server.empty();
      Files.deleteIfExists(log.resolveSibling(SyncState.FILE_NAME));
      try (CuttingProxy proxy = new CuttingProxy(server.port())) {
        sendThroughCuts(log, proxy, random);
        cuts += proxy.cuts();
      }
      new ServerRows(server).assertSame(log, BOOTH);
    }
    System.out.printf("%d rounds with %d cuts: one of each row%n", ROUNDS, cuts);
    assertTrue(cuts >= ROUNDS, "cuts: " + cuts);
  }

  @Test
  void shouldPutTimesRightThatWereSentBeforeTheClockWasSet() throws Exception {
    server.addBooth(LateClockLog.BOOTH);
    Path path = folder.resolve("late").resolve("booth.db");
    PostgresTarget booth = server.target(LateClockLog.BOOTH);
    try (LateClockLog log = new LateClockLog(path)) {
      log.weld();
      sendAll(path, LateClockLog.BOOTH, booth);
      assertEquals(1, reported().untimed().get(0).records().runs().size());
      assertEquals(local(path), reported());
      log.setClock();
      log.weld();
      sendAll(path, LateClockLog.BOOTH, booth);
      assertEquals(2, reported().runs().size());
      assertEquals(local(path), reported());
    }
  }

  private static ShiftRecords reported() throws SyncException {
    return PostgresReport.read(server.instructor(), "", 0, Long.MAX_VALUE).records();
  }

  private static ShiftRecords local(Path log) {
    try (BoothLogReader reader = BoothLogReader.open(log)) {
      return reader.read(0, Long.MAX_VALUE);
    }
  }

  /** Cuts in ever longer spells of the traffic, so that an end is reached. */
  private static void sendThroughCuts(Path log, CuttingProxy proxy, SplittableRandom random)
      throws SyncException {
    long mostBytes = 20_000;
    boolean sent = false;
    while (!sent) {
      proxy.cutAfter(random.nextLong(mostBytes));
      mostBytes += mostBytes / 2;
      try {
        sendAll(log, BOOTH, server.target(BOOTH, proxy.port()));
        sent = true;
      } catch (SyncException cut) {
        assertEquals(SyncException.Kind.LATER, cut.kind(), cut.getMessage());
      }
    }
    assertTrue(proxy.cuts() > 0, "no cut");
  }

  @Test
  void shouldGoOnWhenTheServerWasKilled() throws Exception {
    Path log = log(600);
    try (Syncer syncer = Syncer.open(log, BOOTH, server.target(BOOTH), CLOCK)) {
      while (syncer.status().backlog().get(4).rows() > 400) {
        syncer.sendNext();
      }
      server.kill();
      SyncException gone = assertThrows(SyncException.class, syncer::sendNext);
      assertEquals(SyncException.Kind.LATER, gone.kind(), gone.getMessage());
      SyncException refused = assertThrows(SyncException.class, syncer::sendNext);
      assertTrue(refused.getMessage().contains("is not reached"), refused.getMessage());
      assertTrue(syncer.status().failure().contains("is not reached"));
      server.startAgain();
      while (syncer.sendNext() > 0) {
        // the batch is the work
      }
      assertEquals("", syncer.status().failure());
    }
    new ServerRows(server).assertSame(log, BOOTH);
  }

  @Test
  void shouldWaitForASlowLine() throws Exception {
    Path log = log(50);
    try (CuttingProxy proxy = new CuttingProxy(server.port())) {
      proxy.hold(true);
      ExecutorService thread = Executors.newSingleThreadExecutor();
      Future<?> sending =
          thread.submit(
              () -> {
                sendAll(log, BOOTH, server.target(BOOTH, proxy.port()));
                return null;
              });
      Thread.sleep(1_000);
      assertEquals(0, server.number("SELECT count(*) FROM boothlamp.segment"));
      proxy.hold(false);
      sending.get();
      thread.shutdown();
    }
    new ServerRows(server).assertSame(log, BOOTH);
  }

  @Test
  void shouldTakeRowsOfFiftyBoothsAtOnce() throws Exception {
    List<Path> logs = new ArrayList<>();
    for (int i = 0; i < 50; i++) {
      Path log = folder.resolve("log-" + i).resolve("booth.db");
      FilledLog.write(log, "F-" + i, 10);
      logs.add(log);
      server.addBooth("F-" + i);
    }
    ExecutorService threads = Executors.newFixedThreadPool(50);
    List<Future<?>> sending = new ArrayList<>();
    for (int i = 0; i < 50; i++) {
      String booth = "F-" + i;
      Path log = logs.get(i);
      sending.add(
          threads.submit(
              () -> {
                sendAll(log, booth, server.target(booth));
                return null;
              }));
    }
    for (Future<?> one : sending) {
      one.get();
    }
    threads.shutdown();
    for (int i = 0; i < 50; i++) {
      new ServerRows(server).assertSame(logs.get(i), "F-" + i);
    }
  }

  @Test
  void shouldSetOneBadRowAsideWithItsReasonAndSendTheOthers() throws Exception {
    Path log = log(100);
    FilledLog.execute(log, "UPDATE segment SET trainee = 'T' || char(0) || '1' WHERE id = 37");
    try (Syncer syncer = Syncer.open(log, BOOTH, server.target(BOOTH), CLOCK)) {
      while (syncer.sendNext() > 0) {
        // the batch is the work
      }
      SyncStatus status = syncer.status();
      assertEquals(1, status.setAside().size());
      assertEquals("segment", status.setAside().get(0).table());
      assertEquals(37, status.setAside().get(0).id());
      assertTrue(status.setAside().get(0).reason().contains("0x00"), status.toString());
      assertEquals(0, status.backlogRows());
      assertEquals(99, server.number("SELECT count(*) FROM boothlamp.segment"));

      FilledLog.execute(log, "UPDATE segment SET trainee = 'T-1' WHERE id = 37");
      syncer.retrySetAside();
      while (syncer.sendNext() > 0) {
        // the batch is the work
      }
      assertEquals(List.of(), syncer.status().setAside());
    }
    new ServerRows(server).assertSame(log, BOOTH);
  }

  @Test
  void shouldKeepTheRowsOfANewLogApartFromThoseOfTheOld() throws Exception {
    Path old = log(3);
    sendAll(old, BOOTH, server.target(BOOTH));
    Path fresh = folder.resolve("new-card").resolve("booth.db");
    FilledLog.write(fresh, BOOTH, 5);
    sendAll(fresh, BOOTH, server.target(BOOTH));
    assertEquals(8, server.number("SELECT count(*) FROM boothlamp.segment"));
  }

  @Tag("quiet")
  @Test
  void shouldSendTenThousandSegmentsWithTracesInTenSeconds() throws Exception {
    Path log = log(10_000);
    double quickest = Double.MAX_VALUE;
    for (int i = 0; i < TRIES && quickest > GOAL_SECONDS; i++) {
      quickest = Math.min(quickest, secondsToSend(log));
    }
    System.out.printf(
        "10,000 segments of 10 s, %,d rows of trace and windows, in %.1f s%n",
        server.number("SELECT count(*) FROM boothlamp.trace")
            + server.number("SELECT count(*) FROM boothlamp.segment_window"),
        quickest);
    assertTrue(quickest < GOAL_SECONDS, "took " + quickest + " s");
  }

  private static double secondsToSend(Path log) throws Exception {
    server.empty();
    Files.deleteIfExists(log.resolveSibling(SyncState.FILE_NAME));
    long begun = System.nanoTime();
    sendAll(log, BOOTH, server.target(BOOTH));
    double seconds = (System.nanoTime() - begun) / 1e9;
    assertEquals(10_000, server.number("SELECT count(*) FROM boothlamp.segment"));
    return seconds;
  }

  @Test
  void shouldNeedFewMegabytesAnArcHour() throws Exception {
    Path log = log(720);
    long before = server.number("SELECT pg_database_size('postgres')");
    try (CuttingProxy proxy = new CuttingProxy(server.port())) {
      sendAll(log, BOOTH, server.target(BOOTH, proxy.port()));
      double wire = proxy.passed() / 1e6 / 2;
      Path sticks = Files.createDirectory(folder.resolve("stick"));
      sendAll(log, BOOTH, new FolderTarget(sticks));
      System.out.printf(
          "an arc hour: %.2f MB in the log, %.2f MB on the wire, %.2f MB in the database, %.2f MB in"
              + " the folder%n",
          Files.size(log) / 1e6 / 2,
          wire,
          (server.number("SELECT pg_database_size('postgres')") - before) / 1e6 / 2,
          bytesIn(sticks) / 1e6 / 2);
      assertTrue(wire < 5, "MB on the wire: " + wire);
    }
  }

  private static long bytesIn(Path folder) throws IOException {
    try (Stream<Path> files = Files.list(folder)) {
      return files.mapToLong(file -> file.toFile().length()).sum();
    }
  }
}
