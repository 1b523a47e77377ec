package org.boothlamp.boothlog;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.boothlamp.report.BeadRefusedException;
import org.boothlamp.report.EnteredBead;
import org.boothlamp.report.EnteredBy;
import org.boothlamp.report.ReferenceWeld;
import org.boothlamp.report.RunRecord;
import org.boothlamp.testing.LogEntries;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What is said of runs after the weld: three runs of 10 s. */
class BeadsTest {

  private static final long NOW = LogEntries.FIRST_WALL_MILLIS + 3_600_000;

  @TempDir Path folder;
  private Path log;
  private Beads beads;

  @BeforeEach
  void weld() {
    log = folder.resolve(BoothLog.FILE_NAME);
    FilledLog.write(log, "B-07", 3);
    beads = new Beads(log, () -> NOW);
  }

  private List<RunRecord> runs() {
    try (BoothLogReader reader = BoothLogReader.open(log)) {
      return reader.read(0, Long.MAX_VALUE).runs();
    }
  }

  private RunRecord run(long id) {
    try (BoothLogReader reader = BoothLogReader.open(log)) {
      return reader.run(id);
    }
  }

  private long rows(String table) throws Exception {
    try (LogConnection connection = LogFile.openForReading(log)) {
      return connection.number("SELECT count(*) FROM " + table);
    }
  }

  private static String why(Runnable entering) {
    return assertThrows(BeadRefusedException.class, entering::run).getMessage();
  }

  @Test
  void shouldKeepABeadWithItsRunAndNoOther() {
    RunRecord after = beads.enter(2, 148, "no crater", EnteredBy.INSTRUCTOR);
    assertEquals(
        new EnteredBead(148, NOW, EnteredBy.INSTRUCTOR, "no crater"), after.notes().bead());
    assertEquals(0.8 * 25.7 / 148, after.heatInput().heatInputKilojoulesPerMillimetre(), 1e-12);
    assertEquals(14.8, after.heatInput().travelMillimetresPerSecond(), 1e-12);
    assertEquals(after, run(2));
    assertNull(run(1).notes().bead());
    assertNull(run(3).heatInput());
  }

  @Test
  void shouldCountTheLatestAndKeepTheOnesBefore() throws Exception {
    beads.enter(2, 14.8, "", EnteredBy.NOT_SAID);
    beads.enter(2, 148, "", EnteredBy.TRAINEE);
    beads.enter(3, 99, "", EnteredBy.NOT_SAID);
    assertEquals(148, run(2).notes().bead().lengthMillimetres());
    assertEquals(99, run(3).notes().bead().lengthMillimetres());
    assertEquals(3, rows("bead"));
  }

  @Test
  void shouldFindTheRunThatEndedLast() {
    assertEquals(3, beads.enter(Beads.LATEST, 148, "", EnteredBy.NOT_SAID).id());
  }

  @Test
  void shouldMarkAReferenceWeldAndTakeTheMarkBack() throws Exception {
    beads.markReference(1, "even ripples", EnteredBy.INSTRUCTOR);
    assertEquals(
        new ReferenceWeld(NOW, EnteredBy.INSTRUCTOR, "even ripples"), run(1).notes().reference());
    beads.withdrawReference(1, EnteredBy.INSTRUCTOR);
    assertFalse(run(1).notes().isReference());
    beads.markReference(1, "", EnteredBy.INSTRUCTOR);
    assertTrue(run(1).notes().isReference());
    assertEquals(3, rows("reference_weld"));
  }

  @Test
  void shouldRefuseToTakeAMarkBackThatIsNotThere() {
    assertTrue(
        why(() -> beads.withdrawReference(1, EnteredBy.INSTRUCTOR)).contains("is not marked"));
  }

  @Test
  void shouldNameTheNearestRuns() {
    assertEquals(
        "there is no run 17; the nearest are 2, 3",
        why(() -> beads.enter(17, 148, "", EnteredBy.NOT_SAID)));
    assertTrue(why(() -> run(-5)).contains("the nearest are 1, 2"));
  }

  @Test
  void shouldWriteNothingOfWhatIsRefused() throws Exception {
    assertTrue(why(() -> beads.enter(2, 148_000, "", EnteredBy.NOT_SAID)).contains("measure it"));
    assertTrue(
        why(() -> beads.markReference(2, "x".repeat(300), EnteredBy.INSTRUCTOR))
            .contains("shorten it"));
    assertEquals(0, rows("bead"));
    assertEquals(0, rows("reference_weld"));
  }

  @Test
  void shouldSayThatNothingWasWeldedYet() {
    Path empty = folder.resolve("empty.db");
    BoothLog.open(empty).close();
    Beads none = new Beads(empty, () -> NOW);
    assertTrue(
        why(() -> none.enter(Beads.LATEST, 148, "", EnteredBy.NOT_SAID)).contains("no run in the"));
  }

  @Test
  void shouldMakeNoLogOnlyToFindNoRun() {
    Path missing = folder.resolve("missing.db");
    Beads none = new Beads(missing, () -> NOW);
    assertThrows(BoothLogException.class, () -> none.enter(1, 148, "", EnteredBy.NOT_SAID));
    assertFalse(Files.exists(missing));
  }

  @Test
  void shouldTakeABeadBesideAMonitorAndWaitForTheEndOfItsRun() throws Exception {
    try (FilledLog monitor = new FilledLog(log, "B-07")) {
      monitor.burn();
      assertTrue(why(() -> beads.enter(4, 148, "", EnteredBy.NOT_SAID)).contains("no end yet"));
      beads.enter(2, 148, "", EnteredBy.NOT_SAID);
      monitor.end();
      assertEquals(4, beads.enter(Beads.LATEST, 120, "", EnteredBy.NOT_SAID).id());
    }
    assertEquals(120, run(4).notes().bead().lengthMillimetres());
  }

  @Test
  void shouldLetNobodyChangeWhatWasSaid() {
    beads.enter(2, 148, "", EnteredBy.NOT_SAID);
    beads.markReference(2, "", EnteredBy.INSTRUCTOR);
    for (String change :
        List.of("UPDATE bead SET length_mm = 1", "UPDATE reference_weld SET words = 'x'")) {
      Exception refused = assertThrows(Exception.class, () -> FilledLog.execute(log, change));
      assertTrue(refused.getMessage().contains("never changed"), refused.getMessage());
    }
  }

  @Test
  void shouldForgetItWithTheTrainee() throws Exception {
    beads.enter(2, 148, "", EnteredBy.NOT_SAID);
    beads.enter(3, 148, "", EnteredBy.NOT_SAID);
    beads.markReference(2, "", EnteredBy.INSTRUCTOR);
    FilledLog.forget(log, runs().get(1).trainee());
    assertEquals(1, rows("bead"));
    assertEquals(0, rows("reference_weld"));
  }
}
