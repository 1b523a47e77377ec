package org.boothlamp.sync;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Stream;
import org.boothlamp.boothlog.Beads;
import org.boothlamp.boothlog.BoothLogException;
import org.boothlamp.boothlog.BoothLogReader;
import org.boothlamp.boothlog.CollectedLog;
import org.boothlamp.boothlog.FilledLog;
import org.boothlamp.boothlog.LateClockLog;
import org.boothlamp.boothlog.SegmentTrace;
import org.boothlamp.calibration.BoothHistories;
import org.boothlamp.calibration.CalibrationHistory;
import org.boothlamp.calibration.CalibrationRecord;
import org.boothlamp.calibration.Channel;
import org.boothlamp.monitor.WallClock;
import org.boothlamp.report.EnteredBy;
import org.boothlamp.report.RunNotes;
import org.boothlamp.report.RunRecord;
import org.boothlamp.report.ShiftRecords;
import org.boothlamp.testing.WrittenCalibrations;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** From booths' logs into a folder, and from there into one log. */
class FolderSyncTest {

  @TempDir Path folder;
  private Path stick;
  private Path collected;

  @BeforeEach
  void makeStick() throws IOException {
    stick = Files.createDirectory(folder.resolve("stick"));
    collected = folder.resolve("collected.db");
  }

  private Path log(String booth, int segments) {
    Path log = folder.resolve("log-" + booth).resolve("booth.db");
    FilledLog.write(log, booth, segments);
    return log;
  }

  private void sync(Path log, String booth) throws SyncException {
    try (Syncer syncer = Syncer.open(log, booth, new FolderTarget(stick), WallClock.SYSTEM)) {
      while (syncer.sendNext() > 0) {
        // the batch is the work
      }
    }
  }

  private Collector.Result collect() throws IOException {
    try (CollectedLog log = CollectedLog.open(collected)) {
      return Collector.collect(List.of(stick), log);
    }
  }

  private static ShiftRecords records(Path log) {
    try (BoothLogReader reader = BoothLogReader.open(log)) {
      return reader.read(0, Long.MAX_VALUE);
    }
  }

  private List<Path> files(String ending) throws IOException {
    try (Stream<Path> files = Files.list(stick)) {
      return files.filter(file -> file.toString().endsWith(ending)).sorted().toList();
    }
  }

  @Test
  void shouldCollectWhatTheBoothHas() throws Exception {
    Path log = log("B-07", 30);
    sync(log, "B-07");
    Collector.Result result = collect();
    assertEquals(List.of(), result.refusals());
    assertEquals(records(log), records(collected));
    try (BoothLogReader here = BoothLogReader.open(log);
        BoothLogReader there = BoothLogReader.open(collected)) {
      SegmentTrace expected = here.trace(17);
      SegmentTrace actual = there.trace(17);
      assertTrue(Arrays.equals(expected.meanAmps, actual.meanAmps));
      assertTrue(Arrays.equals(expected.lowestVolts, actual.lowestVolts));
    }
  }

  @Test
  void shouldPutTimesRightThatWereSentBeforeTheClockWasSet() throws Exception {
    Path path = folder.resolve("late").resolve("booth.db");
    try (LateClockLog log = new LateClockLog(path)) {
      log.weld();
      sync(path, LateClockLog.BOOTH);
      assertEquals(List.of(), collect().refusals());
      assertEquals(1, records(collected).untimed().get(0).records().runs().size());
      assertEquals(records(path), records(collected));
      log.setClock();
      log.weld();
      sync(path, LateClockLog.BOOTH);
      assertEquals(List.of(), collect().refusals());
      assertEquals(2, records(collected).runs().size());
      assertEquals(records(path), records(collected));
    }
  }

  private static List<CalibrationRecord> ended(Path log) {
    try (BoothLogReader reader = BoothLogReader.open(log)) {
      return reader.calibrations().records().stream().filter(r -> !r.isUnderWay()).toList();
    }
  }

  @Test
  void shouldCollectCalibrationsEqualToTheBit() throws Exception {
    Path log = log("B-07", 2);
    WrittenCalibrations.write(log);
    WrittenCalibrations.begin(log);
    sync(log, "B-07");
    assertEquals(List.of(), collect().refusals());
    assertEquals(4, ended(collected).size());
    assertEquals(ended(log), ended(collected));
    try (BoothLogReader here = BoothLogReader.open(log);
        BoothLogReader there = BoothLogReader.open(collected)) {
      for (Channel channel : Channel.values()) {
        assertEquals(1, there.calibrationChecks(channel).size());
        assertEquals(here.calibrationChecks(channel), there.calibrationChecks(channel));
      }
    }
  }

  @Test
  void shouldKeepTheCalibrationsOfTwoBoothsApart() throws Exception {
    for (String booth : List.of("B-07", "B-08")) {
      Path log = log(booth, 2);
      WrittenCalibrations.write(log);
      FilledLog.execute(log, "UPDATE segment SET current_calibration = 4, voltage_calibration = 3");
      sync(log, booth);
    }
    // What names a calibration may be collected before it.
    Path away = Files.createDirectory(folder.resolve("away"));
    for (Path file : files("")) {
      if (file.toString().contains("-calibration")) {
        Files.move(file, away.resolve(file.getFileName()));
      }
    }
    collect();
    assertEquals(List.of(), ended(collected));
    for (Path file : listed(away)) {
      Files.move(file, stick.resolve(file.getFileName()));
    }
    assertEquals(List.of(), collect().refusals());
    assertEquals(0, collect().newRows());
    assertEquals(8, ended(collected).size());
    try (BoothLogReader reader = BoothLogReader.open(collected)) {
      BoothHistories histories = reader.calibrationsOfBooths();
      for (RunRecord run : records(collected).runs()) {
        CalibrationHistory own = histories.ofBooth().get(run.booth());
        assertEquals("dropped no. 4", own.find(run.calibrations().current()).withdrawal().reason());
        assertEquals(Channel.VOLTAGE, own.find(run.calibrations().voltage()).channel());
      }
    }
  }

  private static List<Path> listed(Path folder) throws IOException {
    try (Stream<Path> files = Files.list(folder)) {
      return files.toList();
    }
  }

  @Test
  void shouldChangeNothingWhenFoldersAreReadAgain() throws Exception {
    Path log = log("B-07", 5);
    sync(log, "B-07");
    collect();
    ShiftRecords once = records(collected);
    Collector.Result again = collect();
    assertEquals(0, again.newBatches());
    assertEquals(0, again.newRows());
    assertEquals(once, records(collected));
  }

  @Test
  void shouldSendTheSameRowsAgainWithoutADifference() throws Exception {
    Path log = log("B-07", 5);
    sync(log, "B-07");
    List<Path> before = files("");
    Files.delete(log.resolveSibling(SyncState.FILE_NAME));
    sync(log, "B-07");
    assertEquals(before, files(""));
  }

  @Test
  void shouldKeepTheRowsOfTwoBoothsApart() throws Exception {
    sync(log("B-07", 12), "B-07");
    sync(log("B-08", 9), "B-08");
    Collector.Result result = collect();
    assertEquals(List.of(), result.refusals());
    List<RunRecord> runs = records(collected).runs();
    assertEquals(21, runs.size());
    assertEquals(21, runs.stream().map(RunRecord::id).distinct().count());
    assertEquals(12, runs.stream().filter(run -> run.booth().equals("B-07")).count());
    assertEquals(9, runs.stream().filter(run -> run.booth().equals("B-08")).count());
    assertTrue(runs.stream().allMatch(run -> run.windows().size() == 3));
  }

  @Test
  void shouldTakeRowsBeforeTheStartOfTheMonitorThatTheyBelongTo() throws Exception {
    Path log = log("B-07", 3);
    sync(log, "B-07");
    Path boot =
        files(".jsonl.gz").stream()
            .filter(f -> f.toString().contains("-boot-"))
            .findAny()
            .orElseThrow();
    Path away = folder.resolve(boot.getFileName());
    Files.move(boot, away);
    collect();
    Files.move(away, boot);
    collect();
    assertEquals(records(log), records(collected));
  }

  @Test
  void shouldRefuseDamagedBatchesByNameAndCollectTheOthers() throws Exception {
    sync(log("B-07", 5), "B-07");
    Path damaged =
        files(".jsonl.gz").stream()
            .filter(file -> file.toString().contains("-touch-"))
            .findAny()
            .orElseThrow();
    byte[] bytes = Files.readAllBytes(damaged);
    bytes[bytes.length / 2] ^= 1;
    Files.write(damaged, bytes);
    Collector.Result result = collect();
    assertEquals(1, result.refusals().size());
    assertEquals(damaged, result.refusals().get(0).file());
    assertTrue(result.refusals().get(0).why().contains("is damaged"));
    assertEquals(5, records(collected).runs().size());
    assertEquals(0, records(collected).touches().size());
  }

  @Test
  void shouldBelieveNothingOfAStickThatWasPulledAtAnyMoment() throws Exception {
    Path log = log("B-07", 2);
    sync(log, "B-07");
    Path whole = files(".jsonl.gz").get(0);
    byte[] bytes = Files.readAllBytes(whole);
    Path part = whole.resolveSibling(whole.getFileName() + FolderDestination.PART_ENDING);
    for (int length = 0; length < bytes.length; length += 7) {
      Files.deleteIfExists(whole);
      Files.write(part, Arrays.copyOf(bytes, length));
      try (CollectedLog into = CollectedLog.open(folder.resolve("at-" + length + ".db"))) {
        Collector.Result result = Collector.collect(List.of(stick), into);
        assertEquals(List.of(), result.refusals(), "length " + length);
      }
      // A medium that kept the name and lost the end of the bytes.
      Files.write(whole, Arrays.copyOf(bytes, length));
      try (CollectedLog into = CollectedLog.open(folder.resolve("torn-" + length + ".db"))) {
        assertEquals(whole, Collector.collect(List.of(stick), into).refusals().get(0).file());
      }
    }
    Files.delete(log.resolveSibling(SyncState.FILE_NAME));
    sync(log, "B-07");
    assertEquals(List.of(), collect().refusals());
    assertEquals(records(log), records(collected));
  }

  @Test
  void shouldSayThatTheStickIsNotThereAndMakeNoFolder() throws Exception {
    Path log = log("B-07", 1);
    Files.delete(stick);
    SyncException gone = assertThrows(SyncException.class, () -> sync(log, "B-07"));
    assertEquals(SyncException.Kind.LATER, gone.kind());
    assertTrue(gone.getMessage().contains("plug the stick in"), gone.getMessage());
    assertFalse(Files.exists(stick));
  }

  @Test
  void shouldWriteSumsThatSha256sumChecks() throws Exception {
    sync(log("B-07", 1), "B-07");
    Path batch = files(".jsonl.gz").get(0);
    String line = Files.readString(batch.resolveSibling(batch.getFileName() + ".sha256"));
    assertEquals(Sha256.of(Files.readAllBytes(batch)) + "  " + batch.getFileName() + "\n", line);
  }

  @Test
  void shouldForgetATraineeWhoseRowsAreCollectedAlready() throws Exception {
    Path log = log("B-07", 30);
    sync(log, "B-07");
    collect();
    FilledLog.forget(log, "T-4");
    sync(log, "B-07");
    collect();
    assertEquals(records(log), records(collected));
    assertTrue(records(collected).runs().stream().noneMatch(run -> run.trainee().equals("T-4")));
  }

  private static void say(Path log) {
    Beads beads = new Beads(log, WallClock.SYSTEM);
    beads.enter(5, 14.8, "", EnteredBy.NOT_SAID);
    beads.enter(5, 148, "no crater", EnteredBy.TRAINEE);
    beads.markReference(5, "even ripples", EnteredBy.INSTRUCTOR);
    beads.markReference(6, "", EnteredBy.INSTRUCTOR);
    beads.withdrawReference(6, EnteredBy.INSTRUCTOR);
  }

  @Test
  void shouldKeepWhatWasSaidOfARunWithThatRunOfThatBooth() throws Exception {
    sync(log("B-08", 9), "B-08");
    collect();
    Path log = log("B-07", 12);
    sync(log, "B-07");
    collect();
    say(log);
    sync(log, "B-07");
    assertEquals(List.of(), collect().refusals());
    List<RunRecord> noted =
        records(collected).runs().stream()
            .filter(run -> !run.notes().equals(RunNotes.NONE))
            .toList();
    assertEquals(1, noted.size());
    assertEquals("B-07", noted.get(0).booth());
    assertEquals(records(log).runs().get(4).notes(), noted.get(0).notes());
    assertEquals(records(log).runs().get(4).startSeconds(), noted.get(0).startSeconds());
  }

  @Test
  void shouldRefuseWhatIsSaidOfARunThatIsNotCollectedUntilItIs() throws Exception {
    Path log = log("B-07", 12);
    say(log);
    sync(log, "B-07");
    Path segments =
        files(".jsonl.gz").stream()
            .filter(f -> f.toString().contains("-segment-"))
            .findAny()
            .orElseThrow();
    Path away = folder.resolve(segments.getFileName());
    Files.move(segments, away);
    List<Collector.Refusal> refusals = collect().refusals();
    assertEquals(2, refusals.size());
    assertTrue(refusals.get(0).why().contains("run 5, which is not collected yet"));
    Files.move(away, segments);
    assertEquals(List.of(), collect().refusals());
    assertEquals(records(log), records(collected));
  }

  @Test
  void shouldLeaveOutWhatWasSaidOfAForgottenRun() throws Exception {
    Path log = log("B-07", 12);
    say(log);
    sync(log, "B-07");
    List<Path> said =
        files("").stream()
            .filter(f -> f.toString().contains("-bead-") || f.toString().contains("-reference"))
            .toList();
    for (Path file : said) {
      Files.move(file, folder.resolve(file.getFileName()));
    }
    FilledLog.forget(log, records(log).runs().get(4).trainee());
    sync(log, "B-07");
    collect();
    for (Path file : said) {
      Files.move(folder.resolve(file.getFileName()), file);
    }
    assertEquals(List.of(), collect().refusals());
    assertEquals(records(log), records(collected));
  }

  @Test
  void shouldNotCollectIntoTheOwnLogOfABooth() throws Exception {
    Path log = log("B-07", 1);
    BoothLogException refused = assertThrows(BoothLogException.class, () -> CollectedLog.open(log));
    assertTrue(refused.getMessage().contains("own log of a booth"), refused.getMessage());
  }

  @Test
  void shouldRefuseABatchOfANewerVersionByName() throws Exception {
    Path log = log("B-07", 1);
    FilledLog.execute(log, "ALTER TABLE touch ADD COLUMN colour TEXT");
    sync(log, "B-07");
    Collector.Result result = collect();
    assertEquals(1, result.refusals().size());
    assertTrue(result.refusals().get(0).why().contains("newer version"));
  }
}
