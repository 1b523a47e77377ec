package org.boothlamp;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import org.boothlamp.boothlog.BoothLogReader;
import org.boothlamp.testing.BoothFolder;
import org.boothlamp.testing.SyncServer;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The daemon sends rows to a real server that goes away and comes back. */
class DaemonSyncIT {

  /** A run is seen some time after it began. */
  private static final long WHILE_NANOS = 500_000_000L;

  private static final String SENT = "SELECT count(*) FROM boothlamp.segment";

  @TempDir Path folder;

  /** The server runs as another user, who may not look into other folders of tests. */
  @TempDir Path serverFolder;

  private void sendTo(SyncServer server, BoothFolder booth) {
    booth
        .extra(
            """
            [sync]
            kind = "postgresql"
            url = "postgresql://127.0.0.1:%d/%s"
            password_file = "%s"
            every_s = 1
            """
                .formatted(
                    server.port(), SyncServer.DATABASE, server.passwordFile(SyncServer.PASSWORD)))
        .write();
  }

  private static long finished(BoothFolder booth) {
    try (BoothLogReader reader = BoothLogReader.open(booth.log())) {
      return reader.read(0, Long.MAX_VALUE).runs().stream()
          .filter(run -> !run.end().equals("running"))
          .count();
    }
  }

  private static boolean hasBegun(BoothFolder booth, long afterNanos) {
    return LampTrace.read(booth.trace()).rows().stream()
        .anyMatch(row -> row.signal().equals("settling") && row.monotonicNanos() > afterNanos);
  }

  @Test
  void shouldSendEveryRunThoughTheServerGoesAwayAndTheLampGoesOn() throws Exception {
    BoothFolder booth = new BoothFolder(folder);
    ShortRuns.into(booth, folder, 12);
    long[] away;
    try (SyncServer server = SyncServer.start(serverFolder)) {
      server.addBooth(BoothFolder.BOOTH_ID);
      sendTo(server, booth);
      try (DaemonProcess daemon =
          DaemonProcess.start(folder, "run", "--settings", booth.settings())) {
        daemon.awaitSaid("booth " + BoothFolder.BOOTH_ID);
        daemon.await("the first run on the server", () -> server.number(SENT) > 0);
        server.kill();
        long goneNanos = System.nanoTime();
        daemon.await("a run meanwhile", () -> hasBegun(booth, goneNanos + WHILE_NANOS));
        daemon.awaitSaid("trying again");
        server.startAgain();
        away = new long[] {goneNanos, System.nanoTime()};
        long all = finished(booth);
        daemon.await("all runs on the server", () -> server.number(SENT) >= all);
        daemon.awaitSaid("takes rows again");
        assertEquals(143, daemon.terminate());
      }
    }
    int during = LampPunctuality.assertInTime(booth.log(), booth.trace(), away[0], away[1]);
    assertTrue(during > 0, "no run began while the server was away");
  }
}
