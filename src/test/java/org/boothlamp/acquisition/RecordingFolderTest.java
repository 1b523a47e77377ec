package org.boothlamp.acquisition;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class RecordingFolderTest {

  private static final int RATE = 1_000;
  private static final long DAY_MILLIS = 86_400_000L;

  @TempDir Path path;

  private static final String BEFORE = "1f0c9ad2";
  private static final String NOW = "e4b7006c";

  private long nowMillis = 100 * DAY_MILLIS;

  private RecordingFolder folder(long keepBytes, int keepDays, long freeBytes) {
    return new RecordingFolder(
        path, new RecordingLimits(keepBytes, keepDays, freeBytes), () -> nowMillis);
  }

  private RecordingFolder roomy() {
    return folder(1_000_000_000L, 0, 0);
  }

  /** A second of pairs, 4 kB and its sheet. */
  private RecordingName recorded(String machine, long startWallMillis) {
    RecordingName name = new RecordingName(startWallMillis, machine, startWallMillis * 1_000_000);
    RecordingCase.write(path.resolve(name.wav()), RATE, RATE);
    return name;
  }

  private Path found(RecordingName name) {
    return roomy().find(BEFORE + "-5c1e-4f0a", name.startMonotonicNanos());
  }

  private List<String> files(String ending) throws IOException {
    try (Stream<Path> files = Files.list(path)) {
      return files
          .map(file -> file.getFileName().toString())
          .filter(name -> name.endsWith(ending))
          .sorted()
          .toList();
    }
  }

  @Test
  void shouldReadItsOwnNamesAndNoOthers() {
    RecordingName name = new RecordingName(1_772_435_592_450L, "1f0c9ad2", 8_812_450_031L);
    assertEquals("segment-20260302T071312450Z-1f0c9ad2-8812450031.wav", name.wav());
    assertEquals(name, RecordingName.of(name.wav()));
    assertNull(RecordingName.of("hum.wav"));
    assertNull(RecordingName.of("segment-20261302T071312450Z-1f0c9ad2-1.wav"));
  }

  @Test
  void shouldNameAMachineByTheFirstDigitsOfItsBootId() {
    assertEquals("1f0c9ad2", RecordingName.machine("1f0c9ad2-5c1e-4f0a-9d52-7b1f60a1c2e3"));
    assertEquals("0", RecordingName.machine(null));
  }

  @Test
  void shouldFindNoRecordingOfAnotherMachineOrMoment() {
    RecordingName name = recorded(BEFORE, 1_000);
    assertEquals(path.resolve(name.wav()), found(name));
    assertNull(roomy().find(NOW, name.startMonotonicNanos()));
    assertNull(roomy().find(BEFORE, name.startMonotonicNanos() + 1));
  }

  @Test
  void shouldNotCallTodaysRecordingsOldByAClockThatWasWrong() throws IOException {
    RecordingName now = recorded(NOW, 1_000);
    RecordingFolder folder = folder(1_000_000, 7, 0);
    folder.setPresentMachine(NOW);
    folder.keepWithinLimits(0);
    assertEquals(List.of(now.wav()), files(".wav"));
  }

  @Test
  void shouldDeleteTheOldestUntilTheRestIsSmallEnough() throws IOException {
    recorded(BEFORE, 1_000);
    recorded(BEFORE, 2_000);
    RecordingName newest = recorded(NOW, 3_000);
    folder(9_000, 0, 0).keepWithinLimits(3_000);
    assertEquals(List.of(newest.wav()), files(".wav"));
    assertEquals(1, files(".toml").size());
  }

  @Test
  void shouldDeleteWhatIsTooOld() throws IOException {
    recorded(BEFORE, nowMillis - 8 * DAY_MILLIS);
    RecordingName young = recorded(BEFORE, nowMillis - 6 * DAY_MILLIS);
    folder(1_000_000, 7, 0).keepWithinLimits(0);
    assertEquals(List.of(young.wav()), files(".wav"));
  }

  @Test
  void shouldSpareTodaysRecordingsIfTheClockHasGoneBack() throws IOException {
    recorded(BEFORE, 50 * DAY_MILLIS);
    RecordingName now = recorded(NOW, 1_000);
    RecordingFolder folder = folder(5_000, 0, 0);
    folder.setPresentMachine(NOW);
    folder.keepWithinLimits(0);
    assertEquals(List.of(now.wav()), files(".wav"));
  }

  @Test
  void shouldGiveUpItsRecordingsAndSayNoIfTheDiskIsStillTooFull() throws IOException {
    recorded(BEFORE, 1_000);
    RecordingFolder folder = folder(1_000_000, 0, Long.MAX_VALUE);
    SourceException refused = assertThrows(SourceException.class, () -> folder.keepWithinLimits(0));
    assertTrue(refused.what().contains("bytes free"), refused.what());
    assertTrue(refused.nextMove().contains("free_mb"), refused.nextMove());
    assertEquals(List.of(), files(""));
  }

  @Test
  void shouldRefuseASegmentLargerThanAllTogetherMayBe() {
    SourceException refused =
        assertThrows(SourceException.class, () -> folder(10_000, 0, 0).keepWithinLimits(10_001));
    assertTrue(refused.nextMove().contains("keep_mb"), refused.nextMove());
  }

  @Test
  void shouldMakeRoomWithTheOldestFirst() throws IOException {
    recorded(BEFORE, 1_000);
    recorded(BEFORE, 2_000);
    RecordingName newest = recorded(BEFORE, 3_000);
    assertTrue(roomy().makeRoom(5_000));
    assertEquals(List.of(newest.wav()), files(".wav"));
    assertFalse(roomy().makeRoom(5_000));
    assertEquals(List.of(), files(""));
  }

  @Test
  void shouldNeverDeleteWhatIsKeptOnPurpose() throws IOException {
    RecordingName name = recorded(BEFORE, 1_000);
    Path kept = roomy().keep(found(name));
    assertEquals(path.resolve("kept").resolve(name.wav()), kept);
    assertFalse(roomy().makeRoom(1));
    assertEquals(kept, found(name));
    assertEquals(kept, roomy().keep(kept));
    assertEquals(RATE, Recording.open(kept).pairs());
  }

  @Test
  void shouldCopyARecordingWithItsScale() {
    RecordingName name = recorded(BEFORE, 1_000);
    Path copy = path.resolve("copy.wav");
    RecordingFolder.copy(found(name), copy);
    assertEquals(RATE, Recording.open(copy).pairs());
    assertThrows(SourceException.class, () -> RecordingFolder.copy(found(name), copy));
  }

  private RecordingName cutOffAfter(int pairs) {
    RecordingName name = new RecordingName(1_000, BEFORE, 1_000_000_000);
    RecordedSegment segment = new RecordedSegment("B-1", 1_000, "T-\"1\"", "S-1", "fill", 2);
    RecordingSheet sheet = new RecordingSheet(RecordingCase.SCALE, List.of(), segment.toToml(), 2);
    RecordingWriter writer =
        new RecordingWriter(roomy().part(name), roomy().sheet(name), RATE, sheet);
    writer.writeGap(10);
    for (int written = 10; written < pairs; written += 10) {
      writer.write(new short[10], new short[10], 10);
    }
    writer.abandon();
    return name;
  }

  @Test
  void shouldMendWhatAPowerCutLeft() throws IOException {
    RecordingName name = cutOffAfter(2_700);
    roomy().prepare();
    Recording mended = Recording.open(path.resolve(name.wav()));
    assertEquals(2_000, mended.pairs());
    assertEquals(List.of(new PairGap(0, 10)), mended.gaps());
    assertEquals(List.of(), files(".part"));
    String sheet = Files.readString(path.resolve(files(".toml").get(0)));
    assertTrue(sheet.endsWith("pass = \"fill\"\ncontact_pair = 2\ncut_off = true\n"), sheet);
  }

  @Test
  void shouldMendWhatLostItsLastPairsAsWell() throws IOException {
    RecordingName name = cutOffAfter(2_700);
    try (var file = Files.newByteChannel(roomy().part(name), StandardOpenOption.WRITE)) {
      file.truncate(44 + 1_501 * 4 + 3);
    }
    roomy().prepare();
    assertEquals(1_501, Recording.open(path.resolve(name.wav())).pairs());
  }

  @Test
  void shouldDeleteWhatAPowerCutLeftNothingOf() throws IOException {
    cutOffAfter(500);
    Files.writeString(path.resolve("segment-19700101T000001000Z-1f0c9ad2-3.toml"), "[current]\n");
    Files.writeString(path.resolve("mine.txt"), "somebody's own");
    roomy().prepare();
    assertEquals(List.of("mine.txt"), files(""));
  }
}
