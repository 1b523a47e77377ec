package org.boothlamp.sync;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.List;
import java.util.random.RandomGenerator;
import org.boothlamp.boothlog.BoothCalibrations;
import org.boothlamp.boothlog.FilledLog;
import org.boothlamp.calibration.CalibrationBook;
import org.boothlamp.calibration.Withdrawal;
import org.boothlamp.testing.HandTurnedClock;
import org.boothlamp.testing.WrittenCalibrations;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What is sent, in which order, and where the mark stands. */
class SyncerTest {

  @TempDir Path folder;
  private final ScriptedDestination destination = new ScriptedDestination();

  private Path path() {
    return folder.resolve("booth.db");
  }

  private Syncer syncer() throws SyncException {
    return Syncer.open(path(), "B-07", destination, () -> 1_000);
  }

  private static void sendAll(Syncer syncer) throws SyncException {
    while (syncer.sendNext() > 0) {
      // the batch is the work
    }
  }

  @Test
  void shouldSendEachRowOnceInOrder() throws Exception {
    FilledLog.write(path(), "B-07", 5);
    try (Syncer syncer = syncer()) {
      sendAll(syncer);
      sendAll(syncer);
    }
    assertEquals(List.of(1L, 2L, 3L, 4L, 5L), destination.ids("segment"));
    assertEquals(List.of(1L), destination.ids("boot"));
  }

  @Test
  void shouldSendASegmentWhenItHasEndedAndThoseAfterItMeanwhile() throws Exception {
    try (FilledLog log = new FilledLog(path(), "B-07");
        Syncer syncer = syncer()) {
      log.weld(1);
      log.burn();
      sendAll(syncer);
      assertEquals(List.of(1L), destination.ids("segment"));
      assertEquals(1, syncer.backlogRows());
      log.end();
      sendAll(syncer);
      assertEquals(List.of(1L, 2L), destination.ids("segment"));
      assertEquals(0, syncer.backlogRows());
    }
  }

  @Test
  void shouldSendAFaultWhenItIsOverAndOtherEventsMeanwhile() throws Exception {
    try (FilledLog log = new FilledLog(path(), "B-07");
        Syncer syncer = syncer()) {
      log.fault(Double.NaN);
      sendAll(syncer);
      assertEquals(List.of(1L), destination.ids("event"));
      log.fault(3);
      sendAll(syncer);
      assertEquals(List.of(1L, 2L), destination.ids("event"));
    }
  }

  @Test
  void shouldSendAFaultWhoseEndWasNeverSeenAfterTheNextStart() throws Exception {
    try (FilledLog log = new FilledLog(path(), "B-07")) {
      log.fault(Double.NaN);
    }
    try (Syncer syncer = syncer()) {
      sendAll(syncer);
      assertEquals(List.of(1L), destination.ids("event"));
    }
    new FilledLog(path(), "B-07").close();
    try (Syncer syncer = syncer()) {
      sendAll(syncer);
    }
    assertEquals(List.of(1L, 2L, 3L), destination.ids("event").stream().sorted().toList());
  }

  @Test
  void shouldSendACalibrationWholeOnceItHasEnded() throws Exception {
    WrittenCalibrations.write(path());
    long underWay = WrittenCalibrations.begin(path());
    try (Syncer syncer = syncer()) {
      sendAll(syncer);
      assertEquals(List.of(1L, 2L, 3L, 4L), destination.ids("calibration"));
      assertEquals(List.of(1L, 2L), destination.ids("calibration_check"));
      assertEquals(1, syncer.backlogRows());
      try (CalibrationBook book = BoothCalibrations.open(path())) {
        book.finish(underWay, WrittenCalibrations.refusal());
      }
      sendAll(syncer);
      assertEquals(List.of(1L, 2L, 3L, 4L, 5L), destination.ids("calibration"));
      assertEquals(0, syncer.backlogRows());
    }
  }

  @Test
  void shouldSendAWithdrawalOfACalibrationBeforeOneThatWasWithdrawnAlready() throws Exception {
    WrittenCalibrations.write(path());
    try (Syncer syncer = syncer()) {
      sendAll(syncer);
      assertEquals(List.of(1L, 4L), destination.ids("calibration_withdrawal"));
      try (CalibrationBook book = BoothCalibrations.open(path())) {
        book.withdraw(3, new Withdrawal(0, 0, "K-3", "wrong meter"));
      }
      sendAll(syncer);
      assertEquals(List.of(1L, 4L, 3L), destination.ids("calibration_withdrawal"));
    }
  }

  @Test
  void shouldLeaveTheMarkWhereItIsWhenABatchWasNotTaken() throws Exception {
    FilledLog.write(path(), "B-07", 3);
    destination.failures.add(SyncException.later("gone", "wait", null));
    try (Syncer syncer = syncer()) {
      assertThrows(SyncException.class, syncer::sendNext);
      SyncStatus status = syncer.status();
      assertEquals("gone", status.failure());
      assertEquals("wait", status.nextMove());
      assertEquals(1_000, status.lastFailureWallMillis());
      long waiting = status.backlogRows();
      sendAll(syncer);
      assertTrue(waiting >= 3, "waiting: " + waiting);
      assertEquals("", syncer.status().failure());
      assertEquals(0, syncer.backlogRows());
    }
    assertEquals(List.of(1L, 2L, 3L), destination.ids("segment"));
  }

  @Test
  void shouldSetRefusedRowsAsideAndSendAllOthers() throws Exception {
    FilledLog.write(path(), "B-07", 20);
    destination.refusedSegments.addAll(List.of(1L, 13L, 20L));
    try (Syncer syncer = syncer()) {
      sendAll(syncer);
      assertEquals(3, syncer.setAside());
      assertEquals(17, destination.ids("segment").size());
      assertEquals("no such thing here", syncer.status().setAside().get(0).reason());
      destination.refusedSegments.clear();
      assertEquals(3, syncer.retrySetAside());
      sendAll(syncer);
      assertEquals(20, destination.ids("segment").stream().distinct().count());
      assertEquals(List.of(), syncer.status().setAside());
    }
  }

  @Test
  void shouldLetOneAtATimeSend() throws Exception {
    SyncLock lock = SyncLock.tryTake(path());
    assertNotNull(lock);
    assertNull(SyncLock.tryTake(path()));
    lock.close();
    SyncLock again = SyncLock.tryTake(path());
    assertNotNull(again);
    again.close();
  }

  @Test
  void shouldComeBackEverLaterAfterFailuresAndAtOnceAfterSuccess() throws Exception {
    FilledLog.write(path(), "B-07", 1);
    HandTurnedClock clock = new HandTurnedClock();
    for (int i = 0; i < 3; i++) {
      destination.failures.add(SyncException.later("gone", "wait", null));
    }
    SyncWorker worker =
        new SyncWorker(
            path(),
            "B-07",
            destination,
            60,
            new Backoff(longest()),
            clock,
            () -> clock.advanceMillis(100));
    int waits = 0;
    while (destination.ids("segment").isEmpty()) {
      long before = clock.nanoTime();
      worker.step();
      waits += clock.nanoTime() > before ? 1 : 0;
    }
    worker.close();
    // 1 s, 2 s and 4 s in steps of 0.1 s
    assertEquals(70, waits);
  }

  /** Draws the highest number each time. */
  private static RandomGenerator longest() {
    return new RandomGenerator() {
      @Override
      public long nextLong() {
        return 0;
      }

      @Override
      public long nextLong(long bound) {
        return bound - 1;
      }
    };
  }

  @Test
  void shouldDrawPausesFromAllOfTheirRangeUpToFiveMinutes() {
    Backoff backoff = new Backoff(longest());
    long pause = 0;
    for (int i = 0; i < 20; i++) {
      pause = backoff.next();
    }
    assertEquals(Backoff.LONGEST_NANOS, pause);
    backoff.reset();
    assertEquals(Backoff.FIRST_NANOS, backoff.next());
  }
}
